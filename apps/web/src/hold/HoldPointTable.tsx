import { useUnits } from '../fields/useUnits.ts';
import { showWind, useWindUnit } from '../fields/wind.ts';
import { useCatalogue } from '../job/work.ts';
import { showLength, showNumber } from '../text/show.ts';
import { useWords } from '../text/useWords.ts';
import { HandNotes, PointByHand } from './PointByHand.tsx';
import type { HandPlacing } from './useHandPlacing.ts';
import type { HoldView, PointView } from './useHoldView.ts';

interface Props {
  readonly view: HoldView;
  readonly hand: HandPlacing | null;
  readonly active: number | null;
  readonly setActive: (number: number | null) => void;
}

/** Every hold point: where it is, how far to the next and why, its margin, how and at which wind it gives. */
export function HoldPointTable({ view, hand, active, setActive }: Props) {
  const w = useWords();
  const t = w.holding.table;
  return (
    <section>
      <h2 className="minor">{t.title}</h2>
      <p className="about">
        {t.about} <Slack view={view} />
      </p>
      <table className="readings hold-table">
        <thead>
          <tr>
            <th scope="col">{t.point}</th>
            <th scope="col">{t.margin}</th>
            <th scope="col">{t.first}</th>
            <th scope="col">{t.wind}</th>
          </tr>
        </thead>
        <tbody>
          {view.points.map((point, index) => (
            <PointRow
              key={point.number}
              point={point}
              index={index}
              hand={hand}
              byHand={view.held.hold.points[index]!.byHand ?? false}
              view={view}
              active={active === point.number}
              setActive={setActive}
            />
          ))}
        </tbody>
      </table>
      {hand ? <HandNotes hand={hand} view={view} /> : null}
    </section>
  );
}

/** For which slack of the cloth the figures are reckoned, and whether the shop knows it. */
function Slack({ view }: Pick<Props, 'view'>) {
  const w = useWords();
  const t = w.holding.table;
  const own = useCatalogue((catalogue) => catalogue.habits.slack !== undefined);
  const { low, high } = view.held.load.slack;
  return (own ? t.slackOwn : t.slackUsual)(showNumber(100 * low, 1), showNumber(100 * high, 1));
}

interface RowProps {
  readonly point: PointView;
  readonly index: number;
  readonly hand: HandPlacing | null;
  readonly byHand: boolean;
  readonly view: HoldView;
  readonly active: boolean;
  readonly setActive: Props['setActive'];
}

function PointRow({ point, index, hand, byHand, view, active, setActive }: RowProps) {
  const w = useWords();
  const t = w.holding.table;
  const units = useUnits();
  const unit = useWindUnit(units);
  const { margin, letsGo } = point;
  const speed = (value: number | null) => (value === null ? t.beyond : showWind(value, unit));
  return (
    <tr
      className={active ? 'hold-row-active' : undefined}
      onPointerEnter={() => setActive(point.number)}
      onPointerLeave={() => setActive(null)}
    >
      <th scope="row">
        <span className={`hold-mark hold-${point.standing} hold-key`} aria-hidden="true">
          <span className="hold-number">{point.number}</span>
        </span>{' '}
        <span className="only-heard">{point.number}, </span>
        {point.place}
        {byHand ? `, ${w.holding.hand.byHand}` : ''}
        {point.why ? <small className="hold-why">{`${t.next} ${point.why}`}</small> : null}
        <Fit point={point} />
        {hand?.refs[index] && hand.elsewhere === null ? (
          <PointByHand
            number={point.number}
            pointRef={hand.refs[index]}
            byHand={byHand}
            hand={hand}
            view={view}
            next={point.next}
          />
        ) : null}
      </th>
      <td data-label={t.margin}>
        {margin?.low === null || margin === null
          ? t.ample
          : t.from(
              showNumber(margin.low, 2),
              margin.high === null ? t.ample : showNumber(margin.high, 2),
            )}{' '}
        <small className={point.standing === 'gives' ? 'needs' : undefined}>
          {w.holding.standing[point.standing]}
        </small>
      </td>
      <td data-label={t.first}>{margin ? w.holding.mode[margin.mode] : '—'}</td>
      <td data-label={t.wind}>{t.from(speed(letsGo.low), speed(letsGo.high))}</td>
    </tr>
  );
}

/** Whether the pair can stand opposite one another, and the travel left. */
function Fit({ point: { meeting } }: { readonly point: PointView }) {
  const w = useWords();
  const units = useUnits();
  if (!meeting) return null;
  if (meeting.refusal) return <small className="needs">{w.holding.table.noMeet}</small>;
  if (!meeting.travel) return null;
  return (
    <small className="hold-why">
      {w.holding.table.travel(showLength(meeting.travel.outward, units, 32))}
    </small>
  );
}

import { useState } from 'react';
import { useMoneySign, useUnits } from '../fields/useUnits.ts';
import { showWind, useWindUnit } from '../fields/wind.ts';
import { useCatalogue, useJob, useWork } from '../job/work.ts';
import type { Holding, ScopedChoices } from '../panels/scope.ts';
import { showLength, showMoney, showNumber } from '../text/show.ts';
import { useWords } from '../text/useWords.ts';
import { insteadOf } from './insteadOf.ts';
import { type MagnetRanking, useMagnetChoices } from './useMagnetChoices.ts';

interface Props {
  readonly opening: string | undefined;
  readonly scoped: ScopedChoices;
}

/** Which pair of the catalogue: a ranking to choose from, why the rest would not do, and what would instead. */
export function WhichMagnet({ opening, scoped }: Props) {
  const w = useWords();
  const t = w.holding.which;
  const [wanted, setWanted] = useState(false);
  const job = useJob((state) => state.document);
  const catalogue = useCatalogue((one) => one);
  const { choices, sentence, working } = useMagnetChoices(job, catalogue, opening, wanted);
  return (
    <section className="which-magnet" aria-busy={working}>
      <h2 className="minor">{t.title}</h2>
      <p className="about">{t.about}</p>
      {wanted ? null : (
        <button type="button" onClick={() => setWanted(true)}>
          {t.ask}
        </button>
      )}
      <p role="status" className={working ? 'working' : 'only-heard'}>
        {working ? (
          <>
            <span className="working-bar" aria-hidden="true" /> {t.working}
          </>
        ) : null}
      </p>
      {sentence ? (
        <p className="needs">
          {t.failed} {sentence}
        </p>
      ) : null}
      {choices ? <Ranking found={choices} scoped={scoped} /> : null}
    </section>
  );
}

interface RankingProps {
  readonly found: MagnetRanking;
  readonly scoped: ScopedChoices;
}

function Ranking({ found, scoped }: RankingProps) {
  const w = useWords();
  const t = w.holding.which;
  const pair = usePairName();
  return (
    <>
      {found.choices.length === 0 ? <p className="needs">{t.none}</p> : null}
      {found.choices.length > 0 ? (
        <HoldingPairs found={found} scoped={scoped} rows={found.choices.slice(0, SHOWN)} caption />
      ) : null}
      {found.choices.length > SHOWN ? (
        <details>
          <summary>{t.more(found.choices.length - SHOWN)}</summary>
          <HoldingPairs found={found} scoped={scoped} rows={found.choices.slice(SHOWN)} />
        </details>
      ) : null}
      {found.instead.length > 0 ? (
        <>
          <h3>{t.instead}</h3>
          <ul className="instead">
            {found.instead.map((one) => (
              <li key={one.text}>
                {one.text} <ChooseInstead answer={one} scoped={scoped} />
              </li>
            ))}
          </ul>
        </>
      ) : null}
      {found.rejected.length > 0 ? (
        <details>
          <summary>{t.rejected(found.rejected.length)}</summary>
          <ul className="instead">
            {found.rejected.map((one) => (
              <li key={`${one.outside} ${one.inside}`}>
                <b>{pair(one)}.</b> {one.because.map(({ text }) => text).join(' ')}
              </li>
            ))}
          </ul>
        </details>
      ) : null}
    </>
  );
}

/** Best pairs shown before the rest is asked for. */
const SHOWN = 5;

interface HoldingProps extends RankingProps {
  readonly rows: MagnetRanking['choices'];
  readonly caption?: boolean;
}

/** Pairs that hold, best first; choosing one sets both magnets as one step. */
function HoldingPairs({ found, scoped, rows, caption }: HoldingProps) {
  const w = useWords();
  const t = w.holding.which;
  const units = useUnits();
  const unit = useWindUnit(units);
  const sign = useMoneySign();
  const pair = usePairName();
  const { job } = useWork();
  return (
    <table className="readings">
      {caption ? <caption className="about">{t.costAbout}</caption> : null}
      <thead>
        <tr>
          <th scope="col">{t.columns.pair}</th>
          <th scope="col">{t.columns.points}</th>
          <th scope="col">{t.columns.cost}</th>
          <th scope="col">{t.columns.margin}</th>
          <th scope="col">{t.columns.letsGo}</th>
          <th scope="col">{t.columns.travel}</th>
          <th scope="col">
            <span className="only-heard">{t.choose}</span>
          </th>
        </tr>
      </thead>
      <tbody>
        {rows.map((one) => {
          const chosen = one.outside === found.chosen.outside && one.inside === found.chosen.inside;
          return (
            <tr key={`${one.outside} ${one.inside}`} className={chosen ? 'row-chosen' : undefined}>
              <th scope="row">{pair(one)}</th>
              <td data-label={t.columns.points}>{one.points}</td>
              <td data-label={t.columns.cost}>{showMoney(one.cost, sign)}</td>
              <td data-label={t.columns.margin}>
                {one.margin === null ? w.holding.table.ample : showNumber(one.margin, 2)}
              </td>
              <td data-label={t.columns.letsGo}>
                {one.letsGoAt === null ? w.holding.table.beyond : showWind(one.letsGoAt, unit)}
              </td>
              <td data-label={t.columns.travel}>{showLength(one.travel, units)}</td>
              <td className="row-actions">
                {chosen ? (
                  t.chosen
                ) : (
                  <button
                    type="button"
                    aria-label={t.chooseOf(pair(one))}
                    onClick={() => {
                      scoped.setHolding(holdingOf(one));
                      job.settle();
                    }}
                  >
                    {t.choose}
                  </button>
                )}
              </td>
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}

/** A change of the job that makes this pair hold. */
const holdingOf = ({ by, outside, inside }: MagnetRanking['choices'][number]): Holding =>
  by === 'steel'
    ? { by: { kind: 'steel', strip: inside }, outside }
    : { by: { kind: 'magnets' }, outside, inside };

type Answer = MagnetRanking['instead'][number];

/** Uses what was offered, for this opening, where the job can say it: a pair of the catalogue or a fastener of it. */
function ChooseInstead({ answer, scoped }: { readonly answer: Answer; readonly scoped: ScopedChoices }) {
  const t = useWords().holding.which;
  const { job } = useWork();
  const catalogue = useCatalogue((one) => one);
  const found = insteadOf(answer, catalogue, scoped.choices.hold.pocket);
  const { opening } = scoped;
  if (!found || !opening) return null;
  return (
    <button
      type="button"
      className="quiet"
      aria-label={t.useOf(found.name, opening.id)}
      onClick={() => {
        scoped.setHoldingOfOne(found.holding);
        job.settle();
      }}
    >
      {t.use}
    </button>
  );
}

function usePairName(): (pair: { readonly outside: string; readonly inside: string }) => string {
  const w = useWords();
  const magnets = useCatalogue((one) => one.magnets);
  const strips = useCatalogue((one) => one.steelStrips);
  const name = (id: string) => [...magnets, ...(strips ?? [])].find((one) => one.id === id)?.name ?? id;
  return ({ outside, inside }) =>
    outside === inside
      ? w.holding.which.alike(name(outside))
      : w.holding.which.pair(name(outside), name(inside));
}

import { movePoint, type Rigid } from '../contract.ts';
import type { View } from '../drawing/view.ts';
import { useWords } from '../text/useWords.ts';
import type { HoldView, PointView } from './useHoldView.ts';

interface Props {
  readonly view: View;
  readonly place: Rigid;
  readonly held: HoldView;
  readonly active: number | null;
  readonly setActive: (number: number | null) => void;
}

/** The margin as it stands beneath a point: two figures, or none where nothing is asked. */
export const marginText = (low: number | null): string =>
  low === null ? '—' : low >= 10 ? '10+' : low.toFixed(2);

/** The hold points on the drawing: how each stands by its shape and colour, and its margin as a number. */
export function HoldMarks({ view, place, held, active, setActive }: Props) {
  return (
    <div className="hold-marks">
      {held.points.map((point, index) => {
        const at = view.at(movePoint(place, held.held.hold.points[index]!.centre));
        return (
          <div
            key={point.number}
            className={`hold-mark hold-${point.standing}${active === point.number ? ' hold-active' : ''}`}
            style={{ left: at.x, top: at.y }}
            onPointerEnter={() => setActive(point.number)}
            onPointerLeave={() => setActive(null)}
          >
            <MarkFace point={point} />
          </div>
        );
      })}
    </div>
  );
}

/** Number in its shape, margin beneath it. */
export function MarkFace({ point }: { readonly point: PointView }) {
  return (
    <>
      <span className="hold-number">{point.number}</span>
      <span className="hold-margin">{marginText(point.margin?.low ?? null)}</span>
    </>
  );
}

/** What the shapes and numbers say, below the drawing. */
export function MarksKey({ asked }: { readonly asked: number }) {
  const w = useWords();
  const key = w.holding.marksKey;
  const kinds = [
    ['holds', key.holds(asked.toFixed(1))],
    ['doubtful', key.doubtful],
    ['gives', key.gives],
  ] as const;
  return (
    <span className="drawing-key">
      {kinds.map(([kind, text]) => (
        <span key={kind}>
          <span className={`hold-mark hold-${kind} hold-key`} aria-hidden="true">
            <span className="hold-number">1</span>
          </span>{' '}
          {text}
        </span>
      ))}
      <span>{key.number}</span>
    </span>
  );
}

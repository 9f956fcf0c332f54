import { type KeyboardEvent, useState } from 'react';
import type { Opening } from '../contract.ts';
import { arrowStep, arrowWay } from '../drawing/arrowKeys.ts';
import { type Snapped, snap, whole } from '../drawing/snap.ts';
import { useDrag } from '../drawing/useDrag.ts';
import type { Box, View, XY } from '../drawing/view.ts';
import { useUnits } from '../fields/useUnits.ts';
import { useWork } from '../job/work.ts';
import { showLength } from '../text/show.ts';
import { useWords } from '../text/useWords.ts';
import { openingIn } from './readingEdits.ts';

interface Props {
  readonly opening: Opening;
  /** Of the opening, mm: the sides and the middle an obstruction catches on. */
  readonly box: Box;
  readonly view: View;
}

/** Obstructions on the drawing, each to be dragged, or moved by the arrow keys. */
export const HandledObstructions = ({ opening, box, view }: Props) =>
  opening.obstructions.map((one) => (
    <Handled key={one.id} opening={opening} obstruction={one} box={box} view={view} />
  ));

/** How near a line an obstruction catches on it, in dots. */
const CATCH = 7;
/** The least a finger can take hold of, in dots. */
const LEAST = 44;

interface OneProps extends Props {
  readonly obstruction: Opening['obstructions'][number];
}

function Handled({ opening, obstruction: one, box, view }: OneProps) {
  const w = useWords();
  const units = useUnits();
  const { job } = useWork();
  const [caught, setCaught] = useState<readonly [Snapped, Snapped] | null>(null);
  const move = ({ x, y }: XY) =>
    job.edit(`obstruction.${opening.id}.${one.id}.place`, (draft) => {
      const own = openingIn(draft, opening.id).obstructions.find(({ id }) => id === one.id)!;
      [own.x, own.y] = [x, y];
    });
  const catching = (low: number, high: number, size: number) => ({
    lines: [low, (low + high) / 2, high],
    parts: [0, size / 2, size],
    within: CATCH / view.scale,
    step: arrowStep(units, false),
  });
  const drag = useDrag({
    view,
    at: one,
    go: (to) => {
      const x = snap(to.x, catching(box.minX, box.maxX, one.width));
      const y = snap(to.y, catching(box.minY, box.maxY, one.height));
      setCaught([x, y]);
      move({ x: x.at, y: y.at });
    },
    end: () => {
      setCaught(null);
      job.settle();
    },
  });
  const press = (event: KeyboardEvent) => {
    const way = arrowWay(event.key);
    if (!way || event.altKey) return;
    event.preventDefault();
    const step = arrowStep(units, event.shiftKey);
    move({ x: whole(one.x + way.x * step), y: whole(one.y - way.y * step) });
  };
  const corner = view.at({ x: one.x, y: one.y + one.height });
  const [wide, high] = [one.width * view.scale, one.height * view.scale];
  const [padX, padY] = [Math.max(0, LEAST - wide) / 2, Math.max(0, LEAST - high) / 2];
  return (
    <>
      {caught ? <Guides caught={caught} view={view} /> : null}
      {/* biome-ignore lint/a11y/useSemanticElements: an HTML button cannot stand inside a drawing */}
      <g
        role="button"
        tabIndex={0}
        aria-label={w.bench.obstruction(one.name, showLength(one.x, units), showLength(one.y, units))}
        className="handled"
        onKeyDown={press}
        onBlur={job.settle}
        {...drag}
      >
        <rect
          x={corner.x - padX}
          y={corner.y - padY}
          width={wide + 2 * padX}
          height={high + 2 * padY}
          className="handle-reach"
        />
        <rect x={corner.x} y={corner.y} width={wide} height={high} className="obstruction">
          <title>{one.name}</title>
        </rect>
      </g>
    </>
  );
}

/** The lines an obstruction has caught on, across the whole sheet. */
function Guides({
  caught: [x, y],
  view,
}: {
  readonly caught: readonly [Snapped, Snapped];
  readonly view: View;
}) {
  const at = view.at({ x: x.line ?? 0, y: y.line ?? 0 });
  return (
    <>
      {x.line === null ? null : <path d={`M${at.x} 0V${view.height}`} className="guide-line" />}
      {y.line === null ? null : <path d={`M0 ${at.y}H${view.width}`} className="guide-line" />}
    </>
  );
}

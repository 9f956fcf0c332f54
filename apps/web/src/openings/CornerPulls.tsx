import type { KeyboardEvent } from 'react';
import type { Opening, OpeningShape, ReadingName } from '../contract.ts';
import { arrowStep, arrowWay } from '../drawing/arrowKeys.ts';
import { snap } from '../drawing/snap.ts';
import { useDrag } from '../drawing/useDrag.ts';
import type { View } from '../drawing/view.ts';
import { lengthEntry } from '../fields/lengthEntry.ts';
import { useUnits } from '../fields/useUnits.ts';
import { useWork } from '../job/work.ts';
import { showLength } from '../text/show.ts';
import { useWords } from '../text/useWords.ts';
import { cornerPull, handleAt, radiusAt } from './cornerPull.ts';
import { readingsOf, setReading } from './readingEdits.ts';

/** In the order of a taped opening's corners. */
const RADII = ['radiusBottomLeft', 'radiusBottomRight', 'radiusTopRight', 'radiusTopLeft'] as const;

interface Props {
  readonly opening: Opening;
  readonly shape: OpeningShape;
  readonly view: View;
}

/** A grip on each rounding: pulled, it is the radius that is written. One measured several times is not overruled. */
export const CornerPulls = ({ opening, shape, view }: Props) =>
  RADII.map((of, index) =>
    readingsOf(opening, of).length > 1 ? null : (
      <Pull key={of} opening={opening} shape={shape} view={view} of={of} index={index} />
    ),
  );

interface PullProps extends Props {
  readonly of: ReadingName;
  readonly index: number;
}

function Pull({ opening, shape, view, of, index }: PullProps) {
  const w = useWords();
  const units = useUnits();
  const { job } = useWork();
  const corner = cornerPull(
    shape.corners.map(({ at }) => at),
    index,
  );
  const radius = shape.corners[index]!.radius.value;
  const put = (to: number) =>
    job.edit(`reading.${opening.id}.${of}.0`, (draft) =>
      setReading(draft, opening.id, of, 0, lengthEntry(to, units)),
    );
  const step = arrowStep(units, false);
  const place = handleAt(corner, radius);
  const drag = useDrag({
    view,
    at: place,
    go: (to) => put(snap(radiusAt(corner, to), { lines: [], parts: [], within: 0, step }).at),
    end: job.settle,
  });
  const press = (event: KeyboardEvent) => {
    const way = arrowWay(event.key);
    if (!way || event.altKey) return;
    event.preventDefault();
    const to = radius + (way.x - way.y) * arrowStep(units, event.shiftKey);
    put(Math.min(corner.most, Math.max(0, Math.round(to / step) * step)));
  };
  const { x, y } = view.at(place);
  return (
    <g
      role="slider"
      // The keyboard's way is the radius' own field, a step further on; a pressed handle still takes arrow keys.
      tabIndex={-1}
      aria-label={w.bench.pull(w.readings.long[of])}
      aria-valuemin={0}
      aria-valuemax={Math.round(corner.most)}
      aria-valuenow={Math.round(radius)}
      aria-valuetext={showLength(radius, units)}
      className="handled"
      onKeyDown={press}
      onBlur={job.settle}
      {...drag}
    >
      <circle cx={x} cy={y} r={22} className="handle-reach" />
      <circle cx={x} cy={y} r={5.5} className="handle-grip" />
    </g>
  );
}

import { Suspense, useState } from 'react';
import type { Opening, OpeningPlan, ReadingName } from '../contract.ts';
import { Drawing } from '../drawing/Drawing.tsx';
import { Obstructions } from '../drawing/Obstructions.tsx';
import { outlinePath } from '../drawing/outlinePath.ts';
import type { Box, View } from '../drawing/view.ts';
import { useUnits } from '../fields/useUnits.ts';
import { showLength } from '../text/show.ts';
import { useWords } from '../text/useWords.ts';
import { CornerPulls, HandledObstructions } from './laterHandles.ts';
import { ReadingPlace } from './ReadingEntry.tsx';
import { readingsOf } from './readingEdits.ts';
import { type Corners, cornersOf, readingLine, readingPlace, WALK } from './readingPlaces.ts';

interface Props {
  readonly opening: Opening;
  readonly plan: OpeningPlan | undefined;
  readonly stale: boolean;
  /** Kinds of reading for which one more entry is asked. */
  readonly again: Readonly<Partial<Record<ReadingName, number>>>;
}

const PAD = { x: 128, top: 78, bottom: 78 };

/** The opening large, with every reading where it was measured, to be typed there. */
export function OpeningDrawing({ opening, plan, stale, again }: Props) {
  const w = useWords();
  const units = useUnits();
  const [active, setActive] = useState<ReadingName | null>(null);
  const corners = cornersOf(plan);
  const shape = plan?.shape ?? null;
  const label = shape
    ? w.drawing.opening(
        opening.name,
        showLength(shape.width.value, units),
        showLength(shape.height.value, units),
      )
    : w.drawing.sketch;
  return (
    <Drawing
      box={boxOfCorners(corners)}
      label={label}
      pad={PAD}
      stale={stale}
      handled
      caption={shape ? w.drawing.seenFrom : w.drawing.sketch}
      over={(view) =>
        WALK.map((of) => (
          <ReadingPlace
            key={of}
            opening={opening}
            of={of}
            results={shape?.readings ?? []}
            place={readingPlace(of, corners, view)}
            count={readingsOf(opening, of).length + (again[of] ?? 0)}
            onActive={setActive}
          />
        ))
      }
    >
      {(view) => (
        <>
          <g transform={view.world}>
            {shape ? (
              <path d={outlinePath(shape.outline)} className="opening-line opening-large" />
            ) : (
              <path d={sketchPath(corners)} className="line-sketch" />
            )}
            <MeasuredLines
              corners={corners}
              opening={opening}
              suspects={suspectsOf(plan)}
              active={active}
              view={view}
            />
          </g>
          <Suspense
            fallback={
              <g transform={view.world}>
                <Obstructions obstructions={opening.obstructions} />
              </g>
            }
          >
            <HandledObstructions opening={opening} box={boxOfCorners(corners)} view={view} />
            {shape ? <CornerPulls opening={opening} shape={shape} view={view} /> : null}
          </Suspense>
        </>
      )}
    </Drawing>
  );
}

interface LinesProps {
  readonly corners: Corners;
  readonly opening: Opening;
  readonly suspects: ReadonlySet<string>;
  readonly active: ReadingName | null;
  readonly view: View;
}

/** The lines the tape lay along: faint where read, plain where being typed, marked where one does not fit. */
function MeasuredLines({ corners, opening, suspects, active }: LinesProps) {
  return WALK.map((of) => {
    const line = readingLine(of, corners);
    if (!line) return null;
    const inside = of === 'rising' || of === 'falling' || of === 'midWidth' || of === 'midHeight';
    const read = readingsOf(opening, of).length > 0;
    if (!(of === active || suspects.has(of) || (inside && read))) return null;
    const state = suspects.has(of) ? ' tape-suspect' : of === active ? ' tape-active' : '';
    return (
      <line
        key={of}
        x1={line[0].x}
        y1={line[0].y}
        x2={line[1].x}
        y2={line[1].y}
        className={`tape-line${state}`}
      />
    );
  });
}

const suspectsOf = (plan: OpeningPlan | undefined): ReadonlySet<string> =>
  new Set(plan?.shape?.readings.flatMap((one) => (one.suspect ? [one.of] : [])));

function boxOfCorners(corners: Corners): Box {
  const xs = corners.map(({ x }) => x);
  const ys = corners.map(({ y }) => y);
  return { minX: Math.min(...xs), maxX: Math.max(...xs), minY: Math.min(...ys), maxY: Math.max(...ys) };
}

const sketchPath = ([bl, br, tr, tl]: Corners) =>
  `M${bl.x} ${bl.y}L${br.x} ${br.y}L${tr.x} ${tr.y}L${tl.x} ${tl.y}Z`;

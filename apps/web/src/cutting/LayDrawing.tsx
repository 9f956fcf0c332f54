import { memo } from 'react';
import { bounds, type CutPiece, type LayPlan, point } from '../contract.ts';
import { Drawing } from '../drawing/Drawing.tsx';
import { outlinePath } from '../drawing/outlinePath.ts';
import { useUnits } from '../fields/useUnits.ts';
import { showLength } from '../text/show.ts';
import { useWords } from '../text/useWords.ts';

const PAD = { x: 40, top: 34, bottom: 48 };
const NARROW_PAD = { x: 12, top: 16, bottom: 48 };

interface Props {
  readonly lay: LayPlan;
  readonly pieces: readonly CutPiece[];
  readonly stale: boolean;
}

/** Pieces on the roll, its cut end at the left, selvages marked, the length the lay takes and the least it could. */
export const LayDrawing = memo(function LayDrawing({ lay, pieces, stale }: Props) {
  const w = useWords();
  const units = useUnits();
  const length = lay.length.value;
  return (
    <Drawing
      box={{ minX: 0, minY: 0, maxX: length, maxY: lay.rollWidth }}
      label={w.drawing.lay(lay.lay, showLength(length, units))}
      tall={0.56}
      pad={PAD}
      narrowPad={NARROW_PAD}
      stale={stale}
      caption={w.cutting.spacing(showLength(lay.spacing, units))}
    >
      {(view) => {
        const end = view.at({ x: length, y: 0 });
        const start = view.at({ x: 0, y: 0 });
        return (
          <>
            <g transform={view.world}>
              <rect x={0} y={0} width={length} height={lay.rollWidth} className="roll" />
              {lay.selvage > 0 ? (
                <>
                  <rect x={0} y={0} width={length} height={lay.selvage} className="selvage" />
                  <rect
                    x={0}
                    y={lay.rollWidth - lay.selvage}
                    width={length}
                    height={lay.selvage}
                    className="selvage"
                  />
                </>
              ) : null}
              {lay.placements.map(({ piece, copy, outline }) => (
                <path
                  key={`${piece}.${copy}`}
                  d={outlinePath(outline)}
                  className={`piece piece-${kindOf(pieces, piece)}`}
                >
                  <title>{nameOf(pieces, piece)}</title>
                </path>
              ))}
              <line
                x1={lay.leastLength}
                x2={lay.leastLength}
                y1={0}
                y2={lay.rollWidth}
                className="least-line"
              />
            </g>
            {lay.placements.map(({ piece, copy, outline }) => {
              if (kindOf(pieces, piece) !== 'panel') return null;
              const box = bounds(outline);
              const middle = view.at(point((box.minX + box.maxX) / 2, (box.minY + box.maxY) / 2));
              return (
                <text
                  key={`${piece}.${copy}`}
                  x={middle.x}
                  y={middle.y}
                  textAnchor="middle"
                  dominantBaseline="central"
                  className="piece-name"
                >
                  {nameOf(pieces, piece)}
                </text>
              );
            })}
            <path
              d={`M${start.x} ${start.y + 16}H${end.x}M${start.x} ${start.y + 11}v10M${end.x} ${start.y + 11}v10`}
              className="size-line"
            />
            <text x={(start.x + end.x) / 2} y={start.y + 36} textAnchor="middle">
              {showLength(length, units)}
            </text>
          </>
        );
      }}
    </Drawing>
  );
});

const kindOf = (pieces: readonly CutPiece[], piece: string) =>
  pieces.find((one) => one.piece === piece)?.kind ?? 'panel';

function nameOf(pieces: readonly CutPiece[], piece: string): string {
  return pieces.find((one) => one.piece === piece)?.pattern ?? piece;
}

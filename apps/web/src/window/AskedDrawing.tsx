import type { OpeningPlan, ReadingName } from '../contract.ts';
import { outlinePath } from '../drawing/outlinePath.ts';
import { type Box, fitView } from '../drawing/view.ts';
import { cornersOf, readingLine } from '../openings/readingPlaces.ts';
import { useWords } from '../text/useWords.ts';

const [WIDE, HIGH] = [340, 190];

const CORNER: Readonly<Partial<Record<ReadingName, number>>> = {
  radiusBottomLeft: 0,
  radiusBottomRight: 1,
  radiusTopRight: 2,
  radiusTopLeft: 3,
};

interface Props {
  readonly plan: OpeningPlan | undefined;
  readonly of: ReadingName;
  readonly stale: boolean;
}

/** The opening small, with the edge, diagonal or corner that is asked drawn strong. */
export function AskedDrawing({ plan, of, stale }: Props) {
  const w = useWords();
  const corners = cornersOf(plan);
  const xs = corners.map(({ x }) => x);
  const ys = corners.map(({ y }) => y);
  const box: Box = {
    minX: Math.min(...xs),
    maxX: Math.max(...xs),
    minY: Math.min(...ys),
    maxY: Math.max(...ys),
  };
  const view = fitView(box, WIDE, HIGH, { x: 24, top: 20, bottom: 20 });
  const line = readingLine(of, corners)?.map(view.at);
  const at = CORNER[of];
  const corner = at === undefined ? null : view.at(corners[at]!);
  const [bl, br, tr, tl] = corners;
  return (
    <svg
      viewBox={`0 0 ${WIDE} ${HIGH}`}
      role="img"
      aria-label={`${w.window.from[of]}. ${w.window.outside}`}
      className={`window-drawing${stale ? ' drawing-stale' : ''}`}
    >
      <g transform={view.world}>
        {plan?.shape ? (
          <path d={outlinePath(plan.shape.outline)} className="opening-line opening-large" />
        ) : (
          <path
            d={`M${bl.x} ${bl.y}L${br.x} ${br.y}L${tr.x} ${tr.y}L${tl.x} ${tl.y}Z`}
            className="line-sketch"
          />
        )}
      </g>
      {line ? (
        <line x1={line[0]!.x} y1={line[0]!.y} x2={line[1]!.x} y2={line[1]!.y} className="window-asked" />
      ) : null}
      {corner ? <circle cx={corner.x} cy={corner.y} r={16} className="window-asked" /> : null}
    </svg>
  );
}

import type { MarkerCorner } from '../contract.ts';
import { useWords } from '../text/useWords.ts';

const WIDTH = 148;
const HEIGHT = 105;
const SIDE = 30;
const EDGE = 9;
/** Markers of a sheet, and corners of a marker: top left, top right, bottom right, bottom left. */
const RIGHT = [false, true, true, false];
const LOW = [false, false, true, true];

/** A sheet in small, as printed: its markers by their numbers, the meant one's corners by theirs, the meant corner ringed. */
export function MarkerDrawing({ at }: { readonly at: MarkerCorner }) {
  const w = useWords();
  const first = at.marker - (at.marker % 4);
  return (
    <svg
      className="photo-marker"
      width={WIDTH}
      height={HEIGHT}
      viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
      role="img"
      aria-label={w.photo.tapes.drawing}
    >
      <rect x={0.5} y={0.5} width={WIDTH - 1} height={HEIGHT - 1} className="photo-paper" />
      {[0, 1, 2, 3].map((k) => {
        const x = RIGHT[k] ? WIDTH - EDGE - SIDE : EDGE;
        const y = LOW[k] ? HEIGHT - EDGE - SIDE : EDGE;
        const meant = first + k === at.marker;
        return (
          <g key={k} className={meant ? 'photo-meant' : undefined}>
            <rect x={x} y={y} width={SIDE} height={SIDE} className="photo-square" />
            <text x={x + SIDE / 2} y={y + SIDE / 2 + 5} textAnchor="middle">
              {first + k}
            </text>
            {meant ? (
              <circle
                cx={RIGHT[at.corner] ? x + SIDE : x}
                cy={LOW[at.corner] ? y + SIDE : y}
                r={6}
                className="photo-corner"
              />
            ) : null}
          </g>
        );
      })}
    </svg>
  );
}

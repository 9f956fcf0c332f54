import type { HoldOpening } from '../contract.ts';
import { useUnits } from '../fields/useUnits.ts';
import { showLength } from '../text/show.ts';
import { useWords } from '../text/useWords.ts';

const WIDTH = 560;
const TOP = 44;
const HEIGHT = 168;
const MAGNET = 58;

/** Section through the stack: outside at the left, the two magnets at the ends, each layer to one scale between. */
export function StackDrawing({ hold }: { readonly hold: HoldOpening }) {
  const w = useWords();
  const units = useUnits();
  const total = hold.layers.reduce((sum, layer) => sum + layer.thickness, 0);
  const room = WIDTH - 2 * MAGNET - 20;
  // A hair of width for the thinnest layers, so that each can be seen; the rest is to scale.
  const hair = 5;
  const scale = (room - hair * hold.layers.length) / Math.max(total, 0.001);
  let x = 10 + MAGNET;
  return (
    <svg
      viewBox={`0 0 ${WIDTH} ${HEIGHT + 8}`}
      className="stack"
      role="img"
      aria-label={w.drawing.stack(showLength(hold.gap.value, units, 32))}
    >
      <Magnet x={10} name={hold.outside} pole={hold.poles.panelOut} side="left" />
      {hold.layers.map((layer, index) => {
        const width = hair + layer.thickness * scale;
        const left = x;
        x += width;
        return (
          // Layers have no name of their own; their order is what they are.
          <g key={index} className={`layer layer-${layer.name.replace(/[^A-Za-z]/g, '')}`}>
            <rect x={left} y={TOP} width={width} height={HEIGHT - TOP} />
            {width > 26 ? (
              <text
                x={left + width / 2}
                y={TOP + 62}
                textAnchor="middle"
                transform={`rotate(-90 ${left + width / 2} ${TOP + 62})`}
              >
                {w.hold.layers[layer.name] ?? layer.name}
              </text>
            ) : null}
          </g>
        );
      })}
      <Magnet x={x} name={hold.inside} pole={hold.poles.insideOut} side="right" />
      <path d={`M${10 + MAGNET} 30H${x}M${10 + MAGNET} 25v10M${x} 25v10`} className="size-line" />
      <text x={(10 + MAGNET + x) / 2} y={20} textAnchor="middle" className="stack-gap">
        {showLength(hold.gap.value, units, 32)}
      </text>
    </svg>
  );
}

interface MagnetProps {
  readonly x: number;
  readonly name: string;
  /** The pole away from the glass. */
  readonly pole: 'north' | 'south';
  readonly side: 'left' | 'right';
}

/** A magnet in section; its two letters are its poles, the outer one away from the glass. */
function Magnet({ x, name, pole, side }: MagnetProps) {
  const [out, facing] = pole === 'north' ? ['N', 'S'] : ['S', 'N'];
  const [first, second] = side === 'left' ? [out, facing] : [facing, out];
  return (
    <g className="stack-magnet">
      <rect x={x} y={TOP + 16} width={MAGNET} height={HEIGHT - TOP - 32}>
        <title>{name}</title>
      </rect>
      <text x={x + 14} y={(TOP + HEIGHT) / 2} textAnchor="middle" dominantBaseline="central">
        {first}
      </text>
      <text x={x + MAGNET - 14} y={(TOP + HEIGHT) / 2} textAnchor="middle" dominantBaseline="central">
        {second}
      </text>
    </g>
  );
}

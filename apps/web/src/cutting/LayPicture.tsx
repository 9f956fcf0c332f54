import type { LayPlan } from '../contract.ts';
import { Drawing } from '../drawing/Drawing.tsx';
import { outlinePath } from '../drawing/outlinePath.ts';
import { KeptClear } from './KeptClear.tsx';

const PAD = { x: 12, top: 12, bottom: 12 };

interface Props {
  readonly label: string;
  /** Of the cloth shown. */
  readonly length: number;
  readonly lay: Pick<LayPlan, 'rollWidth' | 'placements' | 'leaves'> & Partial<Pick<LayPlan, 'reserved'>>;
}

/** A lay to look at: its pieces, what is kept clear, and what it leaves, numbered. */
export function LayPicture({ label, length, lay }: Props) {
  const { rollWidth, placements, leaves, reserved = [] } = lay;
  return (
    <Drawing
      box={{ minX: 0, minY: 0, maxX: length, maxY: rollWidth }}
      label={label}
      tall={0.3}
      leastHeight={140}
      pad={PAD}
      narrowPad={PAD}
    >
      {(view) => (
        <>
          <g transform={view.world}>
            <rect x={0} y={0} width={length} height={rollWidth} className="roll" />
            <KeptClear places={reserved} rollWidth={rollWidth} end={length} />
            {placements.map(({ piece, copy, outline }) => (
              <path key={`${piece}.${copy}`} d={outlinePath(outline)} className="piece piece-panel" />
            ))}
            {leaves.map(({ x, y, along, across }) => (
              <rect key={`${x} ${y}`} x={x} y={y} width={along} height={across} className="left-piece" />
            ))}
          </g>
          {leaves.map(({ x, y, along, across }, k) => {
            const at = view.at({ x: x + along / 2, y: y + across / 2 });
            return (
              <text
                key={`${x} ${y}`}
                x={at.x}
                y={at.y}
                textAnchor="middle"
                dominantBaseline="central"
                className="piece-name"
              >
                {k + 1}
              </text>
            );
          })}
        </>
      )}
    </Drawing>
  );
}

import { memo, useId } from 'react';
import { MM_PER_INCH, type UnitName } from '../contract.ts';
import type { View } from './view.ts';

/** Squares of a round size, wide enough on the screen to be told apart. */
export function gridStep(view: View, units: UnitName): { readonly size: number; readonly name: string } {
  const steps = units === 'in' ? [1, 2, 6, 12, 24, 48] : [20, 50, 100, 200, 500, 1000];
  const of = units === 'in' ? MM_PER_INCH : 1;
  const step = steps.find((one) => one * of * view.scale >= 22) ?? steps.at(-1)!;
  return { size: step * of, name: `${step} ${units}` };
}

/** The squared ground; a corner of a square lies at the origin. */
export const Grid = memo(function Grid({ view, units }: { readonly view: View; readonly units: UnitName }) {
  const id = useId();
  const size = gridStep(view, units).size * view.scale;
  const origin = view.at({ x: 0, y: 0 });
  return (
    <g>
      <pattern id={id} width={size} height={size} patternUnits="userSpaceOnUse" x={origin.x} y={origin.y}>
        <path d={`M${size} 0H0V${size}`} className="grid-line" />
      </pattern>
      <rect width={view.width} height={view.height} fill={`url(#${id})`} />
    </g>
  );
});

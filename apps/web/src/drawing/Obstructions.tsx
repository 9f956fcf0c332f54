import type { Opening } from '../contract.ts';

/** Rectangles no hold point may sit on, in the opening's millimetres. */
export function Obstructions({ obstructions }: { readonly obstructions: Opening['obstructions'] }) {
  return obstructions.map(({ id, x, y, width, height, name }) => (
    <rect key={id} x={x} y={y} width={width} height={height} className="obstruction">
      <title>{name}</title>
    </rect>
  ));
}

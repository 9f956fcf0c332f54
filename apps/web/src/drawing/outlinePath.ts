import { arcOf, edges, type Outline, type Rigid } from '../contract.ts';

const known = new WeakMap<Outline, string>();

/** The outline as an SVG path in its own millimetres, y up; arcs are arcs. */
export function outlinePath(outline: Outline): string {
  const path = known.get(outline) ?? pathOf(outline);
  known.set(outline, path);
  return path;
}

function pathOf(outline: Outline): string {
  const all = edges(outline);
  const first = all[0]!.from;
  const parts = [`M${number(first.x)} ${number(first.y)}`];
  for (const edge of all) {
    const end = `${number(edge.to.x)} ${number(edge.to.y)}`;
    const arc = arcOf(edge);
    if (!arc) parts.push(`L${end}`);
    else {
      const r = number(arc.radius);
      parts.push(`A${r} ${r} 0 ${Math.abs(edge.bulge) > 1 ? 1 : 0} ${edge.bulge > 0 ? 1 : 0} ${end}`);
    }
  }
  return `${parts.join('')}Z`;
}

/** A rigid motion as an SVG transform. */
export function motionTransform({ angle, shift, mirrored }: Rigid): string {
  const cos = Math.cos(angle);
  const sin = Math.sin(angle);
  const flip = mirrored ? -1 : 1;
  return `matrix(${number(flip * cos)} ${number(flip * sin)} ${number(-sin)} ${number(cos)} ${number(shift.x)} ${number(shift.y)})`;
}

/** Six decimals are far below a screen's dot and keep the text short. */
const number = (value: number): string => `${Number(value.toFixed(6))}`;

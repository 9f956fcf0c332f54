import type { Sample } from './sampledOutline.ts';

/**
 * Points every `step` mm along edges told as [length, curvature, turn before it], from the origin heading along +x, and
 * how far the end misses the start.
 *
 * @source elementary: an arc's end from the sines and cosines of its two headings
 */
export function turtle(edges: readonly (readonly [number, number, number?])[], step: number) {
  let [x, y, heading, carried] = [0, 0, 0, 0];
  const samples: Sample[] = [];
  const place = (along: number, curvature: number) => {
    const end = heading + curvature * along;
    if (curvature === 0) return { x: x + along * Math.cos(heading), y: y + along * Math.sin(heading) };
    return {
      x: x + (Math.sin(end) - Math.sin(heading)) / curvature,
      y: y - (Math.cos(end) - Math.cos(heading)) / curvature,
    };
  };
  for (const [length, curvature, turn = 0] of edges) {
    heading += turn;
    for (; carried < length; carried += step) {
      const end = heading + curvature * carried;
      samples.push({ ...place(carried, curvature), nx: -Math.sin(end), ny: Math.cos(end) });
    }
    carried -= length;
    const next = place(length, curvature);
    heading += curvature * length;
    [x, y] = [next.x, next.y];
  }
  return { samples, gap: Math.hypot(x, y) };
}

import { oneRound } from './shape/turn.ts';

/** Edges whose turns along and across the strip are looked for, the longest. */
const EDGES = 24;

/**
 * Turns that stand for any turn: every whole degree, and those that lay one of the longest edges along or across the
 * strip, since pieces that fill cloth well mostly lie edge to edge.
 *
 * @param polygon vertices [x, y] of a ring, either way round
 * @returns degrees from 0 to under 360, least first
 */
export function anyTurn(polygon: readonly (readonly number[])[]): readonly number[] {
  const edges = polygon.map(([x, y], k) => {
    const [nextX, nextY] = polygon[(k + 1) % polygon.length]!;
    return [nextX! - x!, nextY! - y!] as const;
  });
  const longest = [...edges].sort((a, b) => Math.hypot(...b) - Math.hypot(...a)).slice(0, EDGES);
  const turns = Array.from({ length: 360 }, (_, degrees) => degrees);
  for (const [x, y] of longest)
    for (const quarter of [0, 90, 180, 270]) {
      const degrees = oneRound(quarter - (Math.atan2(y, x) * 180) / Math.PI);
      if (!turns.some((other) => Math.abs(other - degrees) < 1e-9 || other + 360 - degrees < 1e-9))
        turns.push(degrees);
    }
  return turns.sort((a, b) => a - b);
}

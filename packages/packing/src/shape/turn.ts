/** The same turn from 0 to under 360 degrees. */
export const oneRound = (degrees: number): number => ((degrees % 360) + 360) % 360;

/** Cosine and sine of an angle in degrees; exact at quarter turns, where Math.cos is not. */
export function turn(degrees: number): readonly [cos: number, sin: number] {
  const d = oneRound(degrees);
  if (d === 0) return [1, 0];
  if (d === 90) return [0, 1];
  if (d === 180) return [-1, 0];
  if (d === 270) return [0, -1];
  const a = (d * Math.PI) / 180;
  return [Math.cos(a), Math.sin(a)];
}

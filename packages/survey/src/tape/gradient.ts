import type { Quadrilateral } from './quadrilateral.ts';
import { type Measured, RADII } from './tapeSurvey.ts';

type Shares = readonly [number, number, number, number];

/** The two ends of a straight reading as shares of the corners, from bottom left anticlockwise. */
const ENDS: Readonly<Record<string, readonly [Shares, Shares]>> = {
  bottom: [
    [1, 0, 0, 0],
    [0, 1, 0, 0],
  ],
  right: [
    [0, 1, 0, 0],
    [0, 0, 1, 0],
  ],
  top: [
    [0, 0, 1, 0],
    [0, 0, 0, 1],
  ],
  left: [
    [0, 0, 0, 1],
    [1, 0, 0, 0],
  ],
  rising: [
    [1, 0, 0, 0],
    [0, 0, 1, 0],
  ],
  falling: [
    [0, 0, 0, 1],
    [0, 1, 0, 0],
  ],
  midWidth: [
    [0.5, 0, 0, 0.5],
    [0, 0.5, 0.5, 0],
  ],
  midHeight: [
    [0.5, 0.5, 0, 0],
    [0, 0, 0.5, 0.5],
  ],
};

/**
 * Writes how a reading changes with each unknown into one row of a Jacobian, times `scale`.
 *
 * @param row as long as the unknowns (see `quadrilateralOf`), all zeros
 * @returns false for a diagonal over rounded corners, which has no short form here
 * @source derivative of a distance: the unit vector between its ends
 */
export function writeGradient(
  row: Float64Array,
  { corners }: Quadrilateral,
  of: Measured,
  { toRound, rounded, scale }: { toRound: boolean; rounded: readonly number[]; scale: number },
): boolean {
  const radius = (RADII as readonly string[]).indexOf(of);
  if (radius >= 0) {
    row[5 + rounded.indexOf(radius)] = scale;
    return true;
  }
  if (toRound && (of === 'rising' || of === 'falling')) return false;
  const [from, to] = ENDS[of]!;
  let dx = 0;
  let dy = 0;
  for (let k = 0; k < 4; k++) {
    const share = to[k]! - from[k]!;
    dx += share * corners[k]![0];
    dy += share * corners[k]![1];
  }
  const length = Math.hypot(dx, dy);
  const [ux, uy] = length > 0 ? [(scale * dx) / length, (scale * dy) / length] : [0, 0];
  // Unknowns: bottom right x, top right x and y, top left x and y.
  row[0]! += (to[1] - from[1]) * ux;
  row[1]! += (to[2] - from[2]) * ux;
  row[2]! += (to[2] - from[2]) * uy;
  row[3]! += (to[3] - from[3]) * ux;
  row[4]! += (to[3] - from[3]) * uy;
  return true;
}

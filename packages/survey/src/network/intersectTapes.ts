export interface XY {
  readonly x: number;
  readonly y: number;
}

/**
 * The two places at distance `a` from A and `b` from B: left of the line from A to B, then right of it.
 *
 * @returns mm; undefined when the tapes do not meet
 * @accuracy position error about sigma √2 / sin γ, γ being the angle at which the tapes meet
 * @source elementary: x = (a² − b² + c²) / 2c along AB, √(a² − x²) across it
 */
export function intersectTapes(A: XY, B: XY, a: number, b: number): readonly [XY, XY] | undefined {
  const c = Math.hypot(B.x - A.x, B.y - A.y);
  if (!(c > 0)) return undefined;
  const along = (a * a - b * b + c * c) / (2 * c);
  const squared = a * a - along * along;
  if (squared < 0) return undefined;
  const across = Math.sqrt(squared);
  const [ux, uy] = [(B.x - A.x) / c, (B.y - A.y) / c];
  const foot = { x: A.x + along * ux, y: A.y + along * uy };
  return [
    { x: foot.x - across * uy, y: foot.y + across * ux },
    { x: foot.x + across * uy, y: foot.y - across * ux },
  ];
}

/** Angle in [0, 90°] at which two lines from P cross. @source dot and cross product */
export function crossingAngle(P: XY, A: XY, B: XY): number {
  const [ax, ay, bx, by] = [A.x - P.x, A.y - P.y, B.x - P.x, B.y - P.y];
  return Math.atan2(Math.abs(ax * by - ay * bx), Math.abs(ax * bx + ay * by));
}

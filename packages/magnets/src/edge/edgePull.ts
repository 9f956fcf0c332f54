import { type Millimetre, type Newton, newton, type Pascal, type Radian } from '@panewright/quantity';

/**
 * Normal pull on one hold point inside an edge: pressure on half the spacing each side, over the depth that
 * leans on this edge.
 *
 * @param spacing between hold points
 * @param depth of the strip carried by this edge
 * @returns newtons
 * @accuracy exact for the share assumed
 * @source statics: pressure times area
 */
export function holdPointPull(pressure: Pascal, spacing: Millimetre, depth: Millimetre): Newton {
  return newton(pressure * 1e-6 * spacing * depth);
}

/**
 * Pull left at a point where two edges meet: each edge draws along itself; on a straight edge the two cancel, at
 * a corner they add as vectors.
 *
 * @param corner inside angle between the two edges; pi is a straight edge
 * @returns newtons, and the angle from the first edge into the panel
 * @accuracy exact
 * @source statics: sum of two forces
 */
export function cornerPull(
  first: Newton,
  second: Newton,
  corner: Radian,
): { readonly pull: Newton; readonly from: Radian } {
  const along = first + second * Math.cos(corner);
  const across = second * Math.sin(corner);
  return { pull: newton(Math.hypot(along, across)), from: Math.atan2(across, along) as Radian };
}

/**
 * Load at a lever arm that starts to peel a fastener about its near rim: F arm <= N D / 2.
 *
 * @param pull of the fastener, spread evenly over its face
 * @param face diameter, or side across the rim
 * @param arm from the glass to where the load acts
 * @returns newtons
 * @range arm > 0; otherwise it faults
 * @accuracy an estimate: the pocket's cloth is taken as stiff
 * @source common practice, no source: moments about the near rim
 */
export function peelLoad(pull: Newton, face: Millimetre, arm: Millimetre): Newton {
  if (!(arm > 0)) throw new Error(`a load at ${arm} mm from the glass peels nothing`);
  return newton((pull * face) / (2 * arm));
}

/**
 * Ratio of the tight to the slack side of cloth round a bend, exp(mu theta).
 *
 * @returns a true ratio
 * @accuracy exact for dry sliding friction
 * @source sources.md#capstan
 */
export function capstanRatio(friction: number, turn: Radian): number {
  return Math.exp(friction * turn);
}

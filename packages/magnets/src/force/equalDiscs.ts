import { completeElliptic } from './elliptic.ts';

const ke = new Float64Array(2);

/** Share of a face's area-times-remanence that fails to cross an equal face z away: z sqrt(4R^2 + z^2) (K - E) of parameter 4R^2/(4R^2 + z^2). */
export function phi(z: number, diameterSquared: number): number {
  const root = Math.sqrt(diameterSquared + z * z);
  completeElliptic(z / root, ke);
  return z * root * (ke[0]! - ke[1]!);
}

/**
 * z-force on b between two coaxial discs of one diameter, in mm^2 per unit polarisations (the unit of the
 * block kernel, so multiply by FORCE_UNIT * Ja * Jb). Negative attracts.
 * Source: sources.md#robertson-2011, reduced to equal radii, where its third integral drops out.
 */
export function equalCoaxialDiscForce(
  diameter: number,
  thicknessA: number,
  thicknessB: number,
  gap: number,
): number {
  const d2 = diameter * diameter;
  const middle =
    thicknessA === thicknessB
      ? 2 * phi(gap + thicknessA, d2)
      : phi(gap + thicknessA, d2) + phi(gap + thicknessB, d2);
  return 2 * Math.PI * (phi(gap, d2) - middle + phi(gap + thicknessA + thicknessB, d2));
}

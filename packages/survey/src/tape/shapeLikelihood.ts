import type { Quadrilateral } from './quadrilateral.ts';

/** Departure of a well-built opening from its ideal, mm (one sigma), and the spread of a wilful slope. Judgement. */
const BUILT = 3;
const WILFUL = 100;

/** Each kind: its share of openings, and which of (taper across, taper up, lean) it leaves open. Judgement. */
const KINDS = [
  { share: 0.6, taperAcross: BUILT, taperUp: BUILT, lean: BUILT, follow: 0 }, // rectangle
  { share: 0.12, taperAcross: WILFUL, taperUp: BUILT, lean: BUILT, follow: 0 }, // same left and right
  { share: 0.04, taperAcross: BUILT, taperUp: WILFUL, lean: BUILT, follow: 0.5 }, // same top and bottom
  { share: 0.08, taperAcross: BUILT, taperUp: WILFUL, lean: BUILT, follow: 0 }, // sloping top
  { share: 0.03, taperAcross: BUILT, taperUp: WILFUL, lean: BUILT, follow: 1 }, // sloping bottom
  { share: 0.05, taperAcross: BUILT, taperUp: BUILT, lean: WILFUL, follow: 0 }, // leaning, sides parallel
  { share: 0.08, taperAcross: WILFUL, taperUp: WILFUL, lean: WILFUL, follow: 0 }, // no two alike
] as const;

const normalDensity = (x: number, sigma: number) =>
  Math.exp(-0.5 * (x / sigma) ** 2) / (sigma * Math.sqrt(2 * Math.PI));

/**
 * How likely openings of this shape are: near-rectangular or symmetric ones are commoner. A density over the three
 * departures from the rectangle (taper across, taper up, lean), mm⁻³; used to compare explanations, never to adjust.
 *
 * @source judgement; common practice, no source
 */
export function shapeLikelihood({ corners }: Quadrilateral): number {
  const [, [width], [topRightX, rightY], [topLeftX, leftY]] = corners;
  const [leanLeft, leanRight] = [topLeftX, topRightX - width];
  const taperAcross = leanLeft - leanRight;
  const taperUp = rightY - leftY;
  const lean = (leanLeft + leanRight) / 2;
  const slant = (taperUp * (leftY + rightY)) / 2 / width;
  // One upright square, the other wilful: taper across and lean go together.
  const oneSquare = [leanLeft, leanRight].map(
    (square) =>
      normalDensity(square, BUILT) * normalDensity(taperAcross, WILFUL) * normalDensity(taperUp, BUILT),
  );
  const kinds = KINDS.map(
    ({ share, follow, ...sigma }) =>
      share *
      normalDensity(taperAcross, sigma.taperAcross) *
      normalDensity(taperUp, sigma.taperUp) *
      normalDensity(lean - follow * slant, sigma.lean),
  );
  return [...kinds, ...oneSquare.map((density) => 0.06 * density)].reduce((sum, term) => sum + term, 0);
}

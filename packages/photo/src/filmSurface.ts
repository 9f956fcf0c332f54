import type { Adjustment } from './adjust.ts';
import { PER_SHEET, SHARED } from './adjustmentLayout.ts';
import { cholesky, substitute } from './leastSquares.ts';

/** How the height of the film at a place follows from the heights of the sheets. */
export interface HeightRule {
  /** One per node; the height is their sum with the nodes' heights. */
  readonly weights: Float64Array;
  /** Standard deviation left of the height, over what is assumed without sheets, 0..1. */
  readonly left: number;
}

export interface FilmSurface {
  readonly ruleAt: (x: number, y: number) => HeightRule;
  /** Heights of the nodes on the sheets, mm, for any values of the adjustment's unknowns. */
  readonly nodes: (unknowns: Float64Array) => Float64Array;
}

/** Places of a sheet whose height the adjustment tells, mm from its centre. */
const NODES = [
  [0, 0],
  [110, 70],
  [-110, 70],
  [-110, -70],
  [110, -70],
] as const;
/** A hung or taped film bends in waves of about a metre: heights this far apart still know of each other, mm. */
const REACH = 230;
/** Folds and the stiffness of paper: what no sheet near by can tell, as a share of the film's own unevenness. */
const BRIDGING = 0.25;
/** The plane through the sheets is free: where it lies is a matter of the frame, mm and mm in 500. */
const PLANE = 3;

/**
 * The film between and around the sheets, from the heights and tilts the adjustment gives them: a plane plus the
 * likeliest smooth departure from it.
 *
 * @param heightSigma standard deviation of the film's height about a plane, mm
 * @accuracy rendered films: takes a third to a half off the height's uncertainty near the sheets, nothing far off
 * @source sources.md#krige-1951 (linear prediction from known covariance)
 */
export function filmSurface({ layout, unknowns }: Adjustment, heightSigma: number): FilmSurface {
  const places = layout.sheets.flatMap((_, sheet) => {
    const at = SHARED + PER_SHEET * sheet;
    const [c, s] = [Math.cos(unknowns[at + 2]!), Math.sin(unknowns[at + 2]!)];
    return NODES.map(([u, v]) => ({
      x: unknowns[at]! + c * u - s * v,
      y: unknowns[at + 1]! + s * u + c * v,
    }));
  });
  const n = places.length;
  const middle = { x: places.reduce((a, p) => a + p.x / n, 0), y: places.reduce((a, p) => a + p.y / n, 0) };
  const smooth = (ax: number, ay: number, bx: number, by: number) =>
    heightSigma ** 2 * Math.exp(-((ax - bx) ** 2 + (ay - by) ** 2) / (2 * REACH ** 2));
  const plane = (ax: number, ay: number, bx: number, by: number) =>
    PLANE ** 2 * (1 + ((ax - middle.x) * (bx - middle.x) + (ay - middle.y) * (by - middle.y)) / 500 ** 2);
  const matrix = new Float64Array(n * n);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < n; j++) {
      const [p, q] = [places[i]!, places[j]!];
      matrix[i * n + j] = smooth(p.x, p.y, q.x, q.y) + plane(p.x, p.y, q.x, q.y);
    }
    matrix[i * n + i]! += (BRIDGING * heightSigma) ** 2 + 1e-9;
  }
  const lower = cholesky(matrix, n);
  if (!lower) throw new Error('covariance of the heights is not positive');
  return {
    ruleAt: (x, y) => {
      const known = Float64Array.from(places, (p) => smooth(x, y, p.x, p.y) + plane(x, y, p.x, p.y));
      const weights = substitute(lower, known, n);
      const own = heightSigma ** 2 * (1 + BRIDGING ** 2) + plane(x, y, x, y);
      const told = known.reduce((sum, k, i) => sum + k * weights[i]!, 0);
      return { weights, left: Math.sqrt(Math.max(0, own - told)) / heightSigma };
    },
    nodes: (q) => {
      const heights = layout.sheets.flatMap((_, sheet) => {
        const at = SHARED + PER_SHEET * sheet;
        return NODES.map(([u, v]) => q[at + 3]! + q[at + 4]! * u + q[at + 5]! * v);
      });
      return Float64Array.from(heights);
    },
  };
}

/** Height by a rule from the nodes' heights, mm. */
export function heightBy({ weights }: HeightRule, nodes: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < nodes.length; i++) sum += weights[i]! * nodes[i]!;
  return sum;
}

import { ok, type Result, refuse } from '@panewright/quantity';
import { EigenvalueDecomposition, Matrix, SingularValueDecomposition } from 'ml-matrix';
import { levenbergMarquardt } from '../adjustment/levenbergMarquardt.ts';

export interface Circle {
  readonly x: number;
  readonly y: number;
  readonly radius: number;
}
export type CircleMethod = 'kasa' | 'pratt' | 'taubin' | 'unitNorm' | 'geometric';
export type CircleRefusal =
  | { readonly code: 'CIRCLE_TOO_FEW_POINTS'; readonly points: number }
  /** The points lie on a straight line, or are all one. */
  | { readonly code: 'CIRCLE_STRAIGHT' };

/**
 * A circle through points by one of five methods. `geometric` minimises the sum of squared distances; the others are
 * algebraic, `A (x² + y²) + Bx + Cy + D = 0` under a norm: A = 1 (kasa), B² + C² − 4AD (pratt), the mean squared
 * gradient (taubin), A² + B² + C² + D² in the given frame (unitNorm, which depends on where the origin is).
 *
 * @returns centre and radius in the points' unit
 * @accuracy rounding, about 1e-12 of the size
 * @refuses CIRCLE_TOO_FEW_POINTS, CIRCLE_STRAIGHT
 * @source sources.md#gander-1994, sources.md#pratt-1987, sources.md#taubin-1991
 */
export function fitCircle(
  points: readonly { readonly x: number; readonly y: number }[],
  method: CircleMethod,
): Result<Circle, CircleRefusal> {
  if (points.length < 3) return refuse({ code: 'CIRCLE_TOO_FEW_POINTS', points: points.length });
  if (method === 'unitNorm') return finish(unitNorm(points), { x: 0, y: 0 }, 1);
  const mean = (pick: (point: { readonly x: number; readonly y: number }) => number) =>
    points.reduce((sum, point) => sum + pick(point), 0) / points.length;
  const centre = { x: mean(({ x }) => x), y: mean(({ y }) => y) };
  const size = Math.sqrt(mean(({ x, y }) => (x - centre.x) ** 2 + (y - centre.y) ** 2));
  if (!(size > 0)) return refuse({ code: 'CIRCLE_STRAIGHT' });
  const local = points.map(({ x, y }) => ({ x: (x - centre.x) / size, y: (y - centre.y) / size }));
  if (method !== 'geometric') return finish(algebraic(local, method), centre, size);
  const start = finish(algebraic(local, 'taubin'), { x: 0, y: 0 }, 1);
  return start.ok ? geometric(local, start.value, centre, size) : start;
}

type Coefficients = readonly [A: number, B: number, C: number, D: number] | undefined;

/** The least squared algebraic error under a quadratic norm: the smallest eigenvalue of M a = λ N a that is not below 0. */
function algebraic(
  points: readonly { x: number; y: number }[],
  method: 'kasa' | 'pratt' | 'taubin',
): Coefficients {
  const rows = points.map(({ x, y }) => [x * x + y * y, x, y, 1]);
  const design = new Matrix(rows);
  const moments = design.transpose().mmul(design).div(points.length);
  if (method === 'kasa') {
    const [b, c, d] = solve3(moments);
    return b === undefined ? undefined : [1, b, c!, d!];
  }
  const z = moments.get(0, 3);
  const norm =
    method === 'pratt'
      ? [
          [0, 0, 0, -2],
          [0, 1, 0, 0],
          [0, 0, 1, 0],
          [-2, 0, 0, 0],
        ]
      : [
          [4 * z, 2 * moments.get(1, 3), 2 * moments.get(2, 3), 0],
          [2 * moments.get(1, 3), 1, 0, 0],
          [2 * moments.get(2, 3), 0, 1, 0],
          [0, 0, 0, 0],
        ];
  return smallestUnder(design, new Matrix(norm));
}

/** Kåsa's linear problem: minimise Σ (z + Bx + Cy + D)². */
function solve3(moments: Matrix): readonly number[] {
  const [xx, xy, yy, x, y] = [
    [1, 1],
    [1, 2],
    [2, 2],
    [1, 3],
    [2, 3],
  ].map(([i, j]) => moments.get(i!, j!)) as [number, number, number, number, number];
  const [zx, zy, z] = [moments.get(0, 1), moments.get(0, 2), moments.get(0, 3)];
  const [cxx, cxy, cyy, czx, czy] = [xx - x * x, xy - x * y, yy - y * y, zx - z * x, zy - z * y];
  const determinant = cxx * cyy - cxy * cxy;
  if (Math.abs(determinant) < 1e-14 * (cxx + cyy) ** 2) return [];
  const b = -(czx * cyy - czy * cxy) / determinant;
  const c = -(czy * cxx - czx * cxy) / determinant;
  return [b, c, -z - b * x - c * y];
}

/** With the design UΣVᵀ, the answer is the largest eigenvector of Σ⁻¹ Vᵀ N V Σ⁻¹, which is symmetric. */
function smallestUnder(design: Matrix, norm: Matrix): Coefficients {
  const { diagonal, rightSingularVectors } = new SingularValueDecomposition(design, { autoTranspose: true });
  const least = diagonal.indexOf(Math.min(...diagonal));
  // An exact circle: the null vector is the answer under every norm.
  if (diagonal.length < 4 || diagonal[least]! < 1e-12 * Math.max(...diagonal)) return nullVector(design);
  const whiten = rightSingularVectors.mmul(Matrix.diag(diagonal.map((value) => 1 / value)));
  const whitened = whiten.transpose().mmul(norm).mmul(whiten);
  const symmetric = whitened.add(whitened.transpose()).div(2);
  const under = new EigenvalueDecomposition(symmetric, { assumeSymmetric: true });
  const top = under.realEigenvalues.indexOf(Math.max(...under.realEigenvalues));
  return whiten.mmul(under.eigenvectorMatrix.getColumnVector(top)).to1DArray() as unknown as Coefficients;
}

/** The direction that the design squashes most. */
function nullVector(design: Matrix): Coefficients {
  const { realEigenvalues, eigenvectorMatrix } = new EigenvalueDecomposition(
    design.transpose().mmul(design),
    {
      assumeSymmetric: true,
    },
  );
  return eigenvectorMatrix.getColumn(
    realEigenvalues.indexOf(Math.min(...realEigenvalues)),
  ) as unknown as Coefficients;
}

const unitNorm = (points: readonly { readonly x: number; readonly y: number }[]) =>
  nullVector(new Matrix(points.map(({ x, y }) => [x * x + y * y, x, y, 1])));

function finish(
  found: Coefficients,
  centre: { readonly x: number; readonly y: number },
  size: number,
): Result<Circle, CircleRefusal> {
  if (!found) return refuse({ code: 'CIRCLE_STRAIGHT' });
  const [A, B, C, D] = found;
  const squared = (B * B + C * C) / (4 * A * A) - D / A;
  // A radius a million times the spread of the points is a straight line.
  if (!(squared > 0) || Math.abs(A) < 1e-7 * Math.hypot(B, C, D)) return refuse({ code: 'CIRCLE_STRAIGHT' });
  return ok({
    x: centre.x - (size * B) / (2 * A),
    y: centre.y - (size * C) / (2 * A),
    radius: size * Math.sqrt(squared),
  });
}

function geometric(
  points: readonly { x: number; y: number }[],
  start: Circle,
  centre: { readonly x: number; readonly y: number },
  size: number,
): Result<Circle, CircleRefusal> {
  const solved = levenbergMarquardt({
    start: [start.x, start.y, start.radius],
    evaluate: ([cx, cy, r]) => {
      const residuals = Float64Array.from(points, ({ x, y }) => Math.hypot(x - cx!, y - cy!) - r!);
      const jacobian = Float64Array.from(
        points.flatMap(({ x, y }) => {
          const far = Math.hypot(x - cx!, y - cy!) || 1;
          return [(cx! - x) / far, (cy! - y) / far, -1];
        }),
      );
      return { residuals, jacobian };
    },
  });
  if (!solved.ok) return refuse({ code: 'CIRCLE_STRAIGHT' });
  const [x, y, radius] = solved.value.parameters as unknown as readonly [number, number, number];
  if (!(radius > 0) || radius > 1e7) return refuse({ code: 'CIRCLE_STRAIGHT' });
  return ok({ x: centre.x + size * x, y: centre.y + size * y, radius: size * radius });
}

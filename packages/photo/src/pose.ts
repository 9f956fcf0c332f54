import { cholesky, substitute } from './leastSquares.ts';

export interface PlanePose {
  readonly rotation: Float64Array;
  readonly translation: readonly [number, number, number];
}

/**
 * Pose from points of the plane z = 0 and their ideal image points (u, v) = X / Z, Y / Z.
 * A start for the adjustment, no more: the homography is split as if its columns were a rotation's.
 *
 * @param plane x, y in mm, flat list; @param image u, v, flat list of the same length (4 points or more)
 * @returns undefined when the points lie on a line
 * @source sources.md#zhang-2000
 */
export function poseFromPlane(plane: readonly number[], image: readonly number[]): PlanePose | undefined {
  const unit = 300;
  const h = homography(
    plane.map((value) => value / unit),
    image,
  );
  if (!h) return undefined;
  const [a, b, c, d, e, f, g, i] = h as unknown as [
    number,
    number,
    number,
    number,
    number,
    number,
    number,
    number,
  ];
  const first = [a, d, g] as const;
  const second = [b, e, i] as const;
  const scale = (Math.hypot(...first) + Math.hypot(...second)) / 2;
  const r1 = normalise(first);
  const along = dot(r1, second);
  const r2 = normalise([b - along * r1[0], e - along * r1[1], i - along * r1[2]]);
  const r3 = cross(r1, r2);
  const rotation = Float64Array.of(r1[0], r2[0], r3[0], r1[1], r2[1], r3[1], r1[2], r2[2], r3[2]);
  const depth = unit / scale;
  return { rotation, translation: [c * depth, f * depth, depth] };
}

type Vector = readonly [number, number, number];
const dot = (p: Vector, q: Vector) => p[0] * q[0] + p[1] * q[1] + p[2] * q[2];
const normalise = (p: Vector): Vector => {
  const length = Math.hypot(...p);
  return [p[0] / length, p[1] / length, p[2] / length];
};
const cross = (p: Vector, q: Vector): Vector => [
  p[1] * q[2] - p[2] * q[1],
  p[2] * q[0] - p[0] * q[2],
  p[0] * q[1] - p[1] * q[0],
];

/** h11 h12 h13 h21 h22 h23 h31 h32 with h33 = 1, by linear least squares. */
function homography(plane: readonly number[], image: readonly number[]): Float64Array | undefined {
  const normal = new Float64Array(64);
  const right = new Float64Array(8);
  const add = (row: readonly number[], value: number) => {
    for (let i = 0; i < 8; i++) {
      right[i]! += row[i]! * value;
      for (let j = 0; j < 8; j++) normal[8 * i + j]! += row[i]! * row[j]!;
    }
  };
  for (let k = 0; k + 1 < plane.length; k += 2) {
    const [x, y, u, v] = [plane[k]!, plane[k + 1]!, image[k]!, image[k + 1]!];
    add([x, y, 1, 0, 0, 0, -u * x, -u * y], u);
    add([0, 0, 0, x, y, 1, -v * x, -v * y], v);
  }
  const lower = cholesky(normal, 8);
  return lower && substitute(lower, right, 8);
}

/** Rotation vector (axis times angle, radians) of a rotation matrix; the inverse of `rotationOf` below a half turn. */
export function rotationVector(R: Float64Array): Vector {
  const axis: Vector = [R[7]! - R[5]!, R[2]! - R[6]!, R[3]! - R[1]!];
  const sine = Math.hypot(...axis) / 2;
  const cosine = (R[0]! + R[4]! + R[8]! - 1) / 2;
  const angle = Math.atan2(sine, cosine);
  if (sine > 1e-6) return [0, 1, 2].map((k) => (axis[k]! * angle) / (2 * sine)) as unknown as Vector;
  if (cosine > 0) return [0, 0, 0];
  const k = [0, 1, 2].reduce((best, i) => (R[4 * i]! > R[4 * best]! ? i : best), 0);
  const column = [0, 1, 2].map((i) => R[3 * i + k]! + (i === k ? 1 : 0)) as unknown as Vector;
  const length = Math.hypot(...column);
  return column.map((value) => (value * angle) / length) as unknown as Vector;
}

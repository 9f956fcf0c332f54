/** Lens shared by the photos of a job. Pixels, and the usual radial and tangential coefficients. */
export interface Lens {
  readonly focal: number;
  readonly k1: number;
  readonly k2: number;
  readonly p1: number;
  readonly p2: number;
}

/** One photo: lens, principal point and pose. A world point X is R X + t before the lens, z forward. */
export interface Camera extends Lens {
  readonly cx: number;
  readonly cy: number;
  /** Row by row. */
  readonly rotation: Float64Array;
  readonly translation: readonly [number, number, number];
}

/**
 * Pixel of a world point (mm).
 *
 * @returns false, and leaves `out` alone, for a point behind the camera
 * @source sources.md#brown-1971
 */
export function project(camera: Camera, x: number, y: number, z: number, out: Float64Array): boolean {
  const R = camera.rotation;
  const t = camera.translation;
  const depth = R[6]! * x + R[7]! * y + R[8]! * z + t[2];
  if (!(depth > 1)) return false;
  const u = (R[0]! * x + R[1]! * y + R[2]! * z + t[0]) / depth;
  const v = (R[3]! * x + R[4]! * y + R[5]! * z + t[1]) / depth;
  const r2 = u * u + v * v;
  const radial = 1 + r2 * (camera.k1 + r2 * camera.k2);
  out[0] = camera.cx + camera.focal * (u * radial + 2 * camera.p1 * u * v + camera.p2 * (r2 + 2 * u * u));
  out[1] = camera.cy + camera.focal * (v * radial + camera.p1 * (r2 + 2 * v * v) + 2 * camera.p2 * u * v);
  return true;
}

/**
 * The point of the plane z = height seen at a pixel, mm.
 *
 * @returns false when the ray does not meet the plane in front of the camera
 * @accuracy the distortion is undone by fixed-point steps to 1e-10 of the focal length
 * @source sources.md#brown-1971
 */
export function toPlane(camera: Camera, px: number, py: number, height: number, out: Float64Array): boolean {
  const a = (px - camera.cx) / camera.focal;
  const b = (py - camera.cy) / camera.focal;
  let u = a;
  let v = b;
  for (let step = 0; step < 30; step++) {
    const r2 = u * u + v * v;
    const radial = 1 + r2 * (camera.k1 + r2 * camera.k2);
    const nextU = (a - 2 * camera.p1 * u * v - camera.p2 * (r2 + 2 * u * u)) / radial;
    const nextV = (b - camera.p1 * (r2 + 2 * v * v) - 2 * camera.p2 * u * v) / radial;
    const change = Math.abs(nextU - u) + Math.abs(nextV - v);
    u = nextU;
    v = nextV;
    if (change < 1e-10) break;
  }
  const R = camera.rotation;
  const [t0, t1, t2] = camera.translation;
  // Ray in the world: centre C = -R't, direction R'(u, v, 1).
  const dx = R[0]! * u + R[3]! * v + R[6]!;
  const dy = R[1]! * u + R[4]! * v + R[7]!;
  const dz = R[2]! * u + R[5]! * v + R[8]!;
  const cz = -(R[2]! * t0 + R[5]! * t1 + R[8]! * t2);
  const along = (height - cz) / dz;
  if (!(along > 0)) return false;
  out[0] = along * dx - (R[0]! * t0 + R[3]! * t1 + R[6]! * t2);
  out[1] = along * dy - (R[1]! * t0 + R[4]! * t1 + R[7]! * t2);
  return true;
}

/** Where the camera stood, mm in the world frame. */
export function cameraCentre({
  rotation: R,
  translation: [a, b, c],
}: Camera): readonly [number, number, number] {
  return [
    -(R[0]! * a + R[3]! * b + R[6]! * c),
    -(R[1]! * a + R[4]! * b + R[7]! * c),
    -(R[2]! * a + R[5]! * b + R[8]! * c),
  ];
}

/**
 * Rotation matrix, row by row, of a rotation vector (axis times angle in radians).
 *
 * @source Rodrigues' formula
 */
export function rotationOf(x: number, y: number, z: number): Float64Array {
  const angle = Math.hypot(x, y, z);
  const s = angle < 1e-9 ? 1 : Math.sin(angle) / angle;
  const c = angle < 1e-9 ? 0.5 : (1 - Math.cos(angle)) / (angle * angle);
  const cos = 1 - c * angle * angle;
  return Float64Array.of(
    cos + c * x * x,
    c * x * y - s * z,
    c * x * z + s * y,
    c * x * y + s * z,
    cos + c * y * y,
    c * y * z - s * x,
    c * x * z - s * y,
    c * y * z + s * x,
    cos + c * z * z,
  );
}

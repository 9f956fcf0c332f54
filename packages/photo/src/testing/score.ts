import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Outline } from '@panewright/geometry';
import { decodeJpeg, loadOpenCv, type OpenCvModule, type Tape, type TracePhoto } from '@panewright/photo';

type Xy = readonly [number, number];

export interface Truth {
  readonly outline: {
    readonly segments: readonly {
      readonly type: 'line' | 'arc';
      readonly start: Xy;
      readonly end: Xy;
      readonly center?: Xy;
      readonly radius?: number;
      readonly ccw?: boolean;
    }[];
    readonly bbox: readonly [Xy, Xy];
  };
  readonly reference: {
    readonly nominal_marker_corners_mm: Readonly<Record<string, readonly Xy[]>>;
    readonly ruler_check: { readonly measured_x_mm: number; readonly measured_y_mm: number };
  };
  readonly tape: readonly {
    readonly from_marker: number;
    readonly from_corner: number;
    readonly to_marker: number;
    readonly to_corner: number;
    readonly measured_mm: number;
    readonly sigma_mm: number;
  }[];
}

/** The truth of a given picture; a made-up scene has no pairs of places. */
export interface GivenTruth extends Truth {
  readonly outline_px: readonly { readonly mm: Xy; readonly px: Xy }[];
}

/** By `require`: the test runner's import would wrap the module's promise and so break it. */
export const openCv = () =>
  loadOpenCv(async () => ({
    default: createRequire(import.meta.url)('@techstark/opencv-js') as OpenCvModule['default'],
  }));

const file = (name: string) => new URL(`../reference/${name}`, import.meta.url);

export const readTruth = (name: string): GivenTruth =>
  JSON.parse(readFileSync(file(`${name}.json`), 'utf8')) as GivenTruth;

export function readPhoto(name: string): TracePhoto {
  const image = decodeJpeg(readFileSync(file(`${name}.jpg`)));
  return { image, ...(image.focalLength35 ? { focalLength35: image.focalLength35 } : {}) };
}

/** What the maker read: never the true distances. */
export const tapesOf = ({ tape }: Truth): Tape[] =>
  tape.map((t) => ({
    from: { marker: t.from_marker, corner: t.from_corner },
    to: { marker: t.to_marker, corner: t.to_corner },
    length: t.measured_mm,
    sigma: t.sigma_mm,
  }));

/** Points every millimetre or so along the true outline. */
export function truePoints({ outline }: Truth): Xy[] {
  return outline.segments.flatMap((s): Xy[] => {
    if (s.type === 'line') return alongLine(s.start, s.end);
    const [cx, cy] = s.center!;
    const from = Math.atan2(s.start[1] - cy, s.start[0] - cx);
    const sign = s.ccw === false ? -1 : 1;
    const to = Math.atan2(s.end[1] - cy, s.end[0] - cx);
    const sweep = ((((to - from) * sign) % (2 * Math.PI)) + 2 * Math.PI) % (2 * Math.PI);
    return alongArc([cx, cy], s.radius!, from, sign * sweep);
  });
}

/** Points every millimetre or so along an outline of ours. */
export function outlinePoints({ segments }: Outline): Xy[] {
  let from = segments.at(-1)!.to;
  return segments.flatMap((segment): Xy[] => {
    const [a, b] = [from, segment.to];
    from = b;
    if (segment.kind === 'line') return alongLine([a.x, a.y], [b.x, b.y]);
    const chord = Math.hypot(b.x - a.x, b.y - a.y);
    const sweep = 4 * Math.atan(segment.bulge);
    const height = chord / 2 / Math.tan(sweep / 2);
    const cx = (a.x + b.x) / 2 - ((b.y - a.y) / chord) * height;
    const cy = (a.y + b.y) / 2 + ((b.x - a.x) / chord) * height;
    return alongArc([cx, cy], Math.hypot(a.x - cx, a.y - cy), Math.atan2(a.y - cy, a.x - cx), sweep);
  });
}

function alongLine(a: Xy, b: Xy): Xy[] {
  const n = Math.ceil(Math.hypot(b[0] - a[0], b[1] - a[1]));
  return Array.from({ length: n }, (_, i) => [
    a[0] + ((b[0] - a[0]) * i) / n,
    a[1] + ((b[1] - a[1]) * i) / n,
  ]);
}

function alongArc([cx, cy]: Xy, radius: number, from: number, sweep: number): Xy[] {
  const n = Math.max(1, Math.ceil(Math.abs(radius * sweep)));
  return Array.from({ length: n }, (_, i) => {
    const angle = from + (sweep * i) / n;
    return [cx + radius * Math.cos(angle), cy + radius * Math.sin(angle)];
  });
}

/**
 * Sizes of the normal distances of points from a closed polyline after the best rigid motion (no scale, no
 * mirroring), least first. Starts from the frames as they are and from quarter turns.
 */
export function edgeErrors(points: readonly Xy[], truth: readonly Xy[]): number[] {
  const tries = [0, 0.5, 1, 1.5].map((turn) => align(points, truth, turn * Math.PI));
  return tries.sort((a, b) => a.at(-1)! - b.at(-1)!)[0]!;
}

function align(points: readonly Xy[], truth: readonly Xy[], turn: number): number[] {
  let placed = points.map(
    ([x, y]): Xy => [Math.cos(turn) * x - Math.sin(turn) * y, Math.sin(turn) * x + Math.cos(turn) * y],
  );
  for (let round = 0; round < 8; round++) {
    const some = round < 6 ? placed.filter((_, i) => i % 9 === 0) : placed;
    const rows = some.map((p) => {
      const { normal, distance } = offset(p, truth);
      return [normal[0], normal[1], normal[1] * p[0] - normal[0] * p[1], distance] as const;
    });
    const [dx, dy, angle] = solve3(rows);
    const [c, s] = [Math.cos(angle), Math.sin(angle)];
    placed = placed.map(([x, y]): Xy => [c * x - s * y + dx, s * x + c * y + dy]);
  }
  return placed.map((p) => Math.abs(offset(p, truth).distance)).sort((a, b) => a - b);
}

function offset(p: Xy, truth: readonly Xy[]): { normal: Xy; distance: number } {
  let [best, least] = [0, Number.POSITIVE_INFINITY];
  const look = (i: number) => {
    const d = (truth[i]![0] - p[0]) ** 2 + (truth[i]![1] - p[1]) ** 2;
    if (d < least) [best, least] = [i, d];
  };
  for (let i = 0; i < truth.length; i += 16) look(i);
  for (let i = best - 20; i <= best + 20; i++) look((i + truth.length) % truth.length);
  const a = truth[(best + truth.length - 1) % truth.length]!;
  const b = truth[(best + 1) % truth.length]!;
  const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
  const normal: Xy = [(b[1] - a[1]) / length, -(b[0] - a[0]) / length];
  return { normal, distance: (p[0] - truth[best]![0]) * normal[0] + (p[1] - truth[best]![1]) * normal[1] };
}

/** Least squares of r0 a + r1 b + r2 c = -r3 by Cramer's rule. */
function solve3(rows: readonly (readonly [number, number, number, number])[]): [number, number, number] {
  const n = [0, 0, 0, 0, 0, 0, 0, 0, 0];
  const g = [0, 0, 0];
  for (const row of rows) {
    for (let i = 0; i < 3; i++) {
      g[i]! -= row[i]! * row[3];
      for (let j = 0; j < 3; j++) n[3 * i + j]! += row[i]! * row[j]!;
    }
  }
  const det = (m: readonly number[]) =>
    m[0]! * (m[4]! * m[8]! - m[5]! * m[7]!) -
    m[1]! * (m[3]! * m[8]! - m[5]! * m[6]!) +
    m[2]! * (m[3]! * m[7]! - m[4]! * m[6]!);
  const all = det(n);
  return [0, 1, 2].map((k) => det(n.map((value, i) => (i % 3 === k ? g[(i - k) / 3]! : value))) / all) as [
    number,
    number,
    number,
  ];
}

/** Least x, least y, most x, most y. */
export function trueExtent(points: readonly Xy[]): [number, number, number, number] {
  const box: [number, number, number, number] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const [x, y] of points) {
    box[0] = Math.min(box[0], x);
    box[1] = Math.min(box[1], y);
    box[2] = Math.max(box[2], x);
    box[3] = Math.max(box[3], y);
  }
  return box;
}

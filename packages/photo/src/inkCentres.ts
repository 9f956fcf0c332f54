import { type Camera, project } from './camera.ts';
import { type GreyImage, sampleAt } from './image.ts';
import { normalsOf } from './inkPath.ts';
import type { PlanePoint } from './planeGrid.ts';

/** A measured point of the ink's centre line. */
export interface InkPoint extends PlanePoint {
  /** Height of the film there above the sheets' plane, mm. */
  readonly z: number;
  /** Standard deviation of that height, mm. */
  readonly zSigma: number;
  /** Index of the photo it was measured in. */
  readonly photo: number;
  /** Pixel it was seen at. */
  readonly px: number;
  readonly py: number;
  /** Place along the path: index of the path's point. */
  readonly row: number;
  /** Unit normal of the path there, outward. */
  readonly nx: number;
  readonly ny: number;
  /** Width of the ink, mm. */
  readonly width: number;
  /** Contrast against the darker side, 0..1. */
  readonly contrast: number;
}

const REACH = 6;
const STEP = 0.15;
/** A sheet nearer than this spoils the background, mm. */
const CLEAR = 3;
/** Background is read this far from the ink's middle, mm. */
const SIDE = [2.4, 4.6] as const;

/**
 * Centre line of the ink across each point of a closed path: the middle of the two places where the grey is
 * half way between the ink and its own side's background, which does not move when one side is brighter.
 *
 * @returns only the points where a line of 0.5 to 7 mm is seen; covered stretches give none
 * @accuracy rendered photos: 0.05 to 0.1 mm besides the hand's own wobble
 * @source sources.md#steger-1998 (the bias of unequal sides)
 */
export function inkCentres(
  image: GreyImage,
  camera: Camera,
  path: readonly PlanePoint[],
  photo: number,
  covered: (x: number, y: number) => boolean,
): InkPoint[] {
  const normals = normalsOf(path);
  const points: InkPoint[] = [];
  const profile = new Float64Array(2 * Math.round(REACH / STEP) + 1);
  const pixel = new Float64Array(2);
  path.forEach((p, i) => {
    const normal = normals[i]!;
    const beside = (d: number) => covered(p.x + d * normal.x, p.y + d * normal.y);
    if (beside(0) || beside(CLEAR) || beside(-CLEAR)) return;
    if (!readProfile(image, camera, p, normal, profile, pixel)) return;
    const found = centreOf(profile);
    if (!found) return;
    const x = p.x + found.offset * normal.x;
    const y = p.y + found.offset * normal.y;
    project(camera, x, y, 0, pixel);
    const at = { z: 0, zSigma: 0, photo, px: pixel[0]!, py: pixel[1]!, row: i, nx: normal.x, ny: normal.y };
    points.push({ x, y, ...at, width: found.width, contrast: found.contrast });
  });
  return points;
}

/** Mean of three profiles 0.7 mm apart along the line: less noise, no shift. */
function readProfile(
  image: GreyImage,
  camera: Camera,
  p: PlanePoint,
  normal: PlanePoint,
  profile: Float64Array,
  pixel: Float64Array,
): boolean {
  const middle = (profile.length - 1) / 2;
  for (let k = 0; k < profile.length; k++) {
    const d = (k - middle) * STEP;
    let sum = 0;
    for (let a = -1; a <= 1; a++) {
      const x = p.x + d * normal.x - a * 0.7 * normal.y;
      const y = p.y + d * normal.y + a * 0.7 * normal.x;
      sum += project(camera, x, y, 0, pixel) ? sampleAt(image, pixel[0]!, pixel[1]!) : Number.NaN;
    }
    profile[k] = sum / 3;
  }
  return !profile.some(Number.isNaN);
}

function centreOf(profile: Float64Array): { offset: number; width: number; contrast: number } | undefined {
  const middle = (profile.length - 1) / 2;
  const near = Math.round(1.4 / STEP);
  let dark = middle;
  for (let k = middle - near; k <= middle + near; k++) if (profile[k]! < profile[dark]!) dark = k;
  const floor = (profile[dark - 1]! + profile[dark]! + profile[dark + 1]!) / 3;
  const left = background(profile, dark, -1);
  const right = background(profile, dark, 1);
  const contrast = (Math.min(left, right) - floor) / Math.max(25, Math.min(left, right));
  if (!(contrast > 0.06) || Math.min(left, right) - floor < 6) return undefined;
  const from = crossing(profile, dark, -1, (left + floor) / 2);
  const to = crossing(profile, dark, 1, (right + floor) / 2);
  if (from === undefined || to === undefined) return undefined;
  const width = (to - from) * STEP;
  if (width < 0.5 || width > 7) return undefined;
  const offset = ((from + to) / 2 - middle) * STEP;
  return Math.abs(offset) < 3 ? { offset, width, contrast } : undefined;
}

/** Grey beside the line: the median, or the brightest stretch where another line darkens the median. */
function background(profile: Float64Array, dark: number, side: 1 | -1): number {
  const values: number[] = [];
  for (let d = SIDE[0]; d <= SIDE[1]; d += STEP) {
    const k = dark + side * Math.round(d / STEP);
    if (k >= 0 && k < profile.length) values.push(profile[k]!);
  }
  values.sort((a, b) => a - b);
  const usual = values[values.length >> 1] ?? Number.NaN;
  let brightest = 0;
  for (let d = 1.5; d <= SIDE[1]; d += STEP) {
    const k = dark + side * Math.round(d / STEP);
    if (k < 2 || k + 2 >= profile.length) continue;
    const mean = (profile[k - 2]! + profile[k - 1]! + profile[k]! + profile[k + 1]! + profile[k + 2]!) / 5;
    brightest = Math.max(brightest, mean);
  }
  return usual < 0.8 * brightest ? brightest : usual;
}

function crossing(profile: Float64Array, dark: number, side: 1 | -1, level: number): number | undefined {
  for (let k = dark; k + side >= 0 && k + side < profile.length; k += side) {
    const [a, b] = [profile[k]!, profile[k + side]!];
    if (a <= level && b > level) return k + (side * (level - a)) / (b - a);
  }
  return undefined;
}

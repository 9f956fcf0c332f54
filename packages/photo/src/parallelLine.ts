import type { Camera } from './camera.ts';
import { smoothClosed } from './closedCurve.ts';
import type { GreyImage } from './image.ts';
import { darkestPath, lineContrast, pointsOn, unwrap } from './inkPath.ts';
import type { PlanePoint } from './planeGrid.ts';

/** A second line that keeps the first one company: a rim, a frame's edge, a line drawn twice. */
export interface ParallelLine {
  /** Median distance from the line traced, mm; positive outside. */
  readonly offset: number;
  /** Share of the way round that it is seen, 0..1. */
  readonly share: number;
  /** Its contrast over that of the line traced. */
  readonly strength: number;
  readonly curve: readonly PlanePoint[];
}

const REACH = 14;
/** The traced line itself is this wide at most, mm either side. */
const OWN = 2.6;
/** Seen over less of the way round, it is writing, a crease or a plank joint. */
const LEAST_SHARE = 0.45;

/**
 * Looks for a second line beside a traced one.
 *
 * @returns undefined when nothing keeps beside it for long
 * @range lines between 3 and 14 mm apart; closer ones look like one thick line
 * @source as for the line itself: sources.md#bellman-1957
 */
export function parallelLine(
  image: GreyImage,
  camera: Camera,
  path: readonly PlanePoint[],
  covered: (x: number, y: number) => boolean,
): ParallelLine | undefined {
  const band = unwrap(image, camera, path, REACH, 0.5);
  const contrast = lineContrast(band, covered);
  const middle = (band.width - 1) / 2;
  const own: number[] = [];
  const own2 = Math.round(OWN / band.step);
  for (let row = 0; row < band.rows; row++) {
    let most = 0;
    for (let k = middle - own2; k <= middle + own2; k++) {
      most = Math.max(most, contrast[row * band.width + k]!);
      contrast[row * band.width + k] = 0;
    }
    own.push(most);
  }
  const columns = darkestPath(contrast, band.rows, band.width, 2, 0.02);
  const offsets = Array.from(columns, (k) => (k - middle) * band.step);
  const offset = median(offsets);
  const level = Math.max(0.05, 0.25 * median(own));
  const strong = offsets.map((d, row) => {
    const c = contrast[row * band.width + columns[row]!]!;
    return Math.abs(d - offset) < 2 && c > level ? c : 0;
  });
  const share = strong.filter((c) => c > 0).length / band.rows;
  if (share < LEAST_SHARE || Math.abs(offset) <= OWN) return undefined;
  const strength = median(strong.filter((c) => c > 0)) / Math.max(0.01, median(own));
  const steady = Array.from(columns, (k, row) =>
    strong[row]! > 0 ? k : Math.round(middle + offset / band.step),
  );
  return { offset, share, strength, curve: smoothClosed(pointsOn(band, steady), 4) };
}

function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[sorted.length >> 1] ?? 0;
}

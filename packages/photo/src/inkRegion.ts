import { components, distanceTo, localContrast, outerBoundary } from './morphology.ts';
import type { PlaneGrid, PlanePoint } from './planeGrid.ts';

/** A closed curve that ink seems to follow. */
export interface RegionCandidate {
  /** Anticlockwise, one point about every 2 mm; one curve per size of notch bridged, smallest first. */
  readonly curves: readonly (readonly PlanePoint[])[];
  /** Mean local contrast under the curve, 0..1. */
  readonly darkness: number;
  /** Enclosed area, mm². */
  readonly area: number;
}

/** Widest dark line still taken for a line, mm. */
const LINE_WINDOW = 9;
/** Gaps in the ink that are bridged are twice these, mm. */
const BRIDGES = [1.7, 4, 8, 14];
/** Local contrast above which a cell may be ink. */
const LEVELS = [0.42, 0.28, 0.18, 0.11];
/** Letters and ticks that touch the line leave no notch narrower than twice this; but an inward corner needs little, mm. */
const CLOSINGS = [8, 40, 120];
/** No pattern is smaller, mm². */
const LEAST_AREA = 15_000;
/** Shorter dark marks are dust or print, mm. */
const LEAST_MARK = 22;

/** A candidate this dark all round needs no fainter threshold. */
const DARK_ENOUGH = 0.42;

/**
 * Closed regions of the plane that a dark line goes round, best first: thresholded local contrast, short marks
 * dropped, the rest thickened until it encloses something. The darkest threshold that encloses anything with
 * ink nearly all round is the last one tried.
 *
 * @param seen rectified photo, 0 where it does not reach; @param covered 1 where a sheet lies
 * @returns at most six, ordered by darkness under the boundary with a slight favour to larger area
 * @source common practice in image analysis, no source
 */
export function inkRegions(
  seen: Uint8Array,
  covered: Uint8Array,
  fine: PlaneGrid,
): readonly RegionCandidate[] {
  const contrast = localContrast(seen, fine.columns, fine.rows, Math.round(LINE_WINDOW / 2 / fine.step));
  for (let k = 0; k < contrast.length; k++) if (covered[k]) contrast[k] = 0;
  const grid = coarser(fine);
  const dark = pool(contrast, fine, grid, true);
  const reached = pool(seen, fine, grid, false);
  const candidates: RegionCandidate[] = [];
  for (const level of LEVELS) {
    const distance = distanceTo(inkCells(dark, grid, level), grid.columns, grid.rows);
    for (const bridge of BRIDGES)
      candidates.push(...enclosed(distance, reached, dark, grid, bridge, candidates));
    if (candidates.some((c) => c.darkness > DARK_ENOUGH)) break;
  }
  const value = (c: RegionCandidate) => Math.min(c.darkness, 0.55) * c.area ** 0.08;
  return distinct(candidates.sort((a, b) => value(b) - value(a))).slice(0, 6);
}

function coarser({ x, y, step, columns, rows }: PlaneGrid): PlaneGrid {
  return { x: x + step / 2, y: y + step / 2, step: 2 * step, columns: columns >> 1, rows: rows >> 1 };
}

/** Largest or least of every 2 x 2 cells. */
function pool(cells: Uint8Array, from: PlaneGrid, to: PlaneGrid, largest: boolean): Uint8Array {
  const out = new Uint8Array(to.columns * to.rows);
  const pick = largest ? Math.max : Math.min;
  for (let j = 0, k = 0; j < to.rows; j++) {
    for (let i = 0, at = 2 * j * from.columns; i < to.columns; i++, k++, at += 2) {
      const below = at + from.columns;
      out[k] = pick(cells[at]!, cells[at + 1]!, cells[below]!, cells[below + 1]!);
    }
  }
  return out;
}

function inkCells(contrast: Uint8Array, { columns, rows, step }: PlaneGrid, level: number): Uint8Array {
  const ink = new Uint8Array(contrast.length);
  for (let k = 0; k < ink.length; k++) if (contrast[k]! > 255 * level) ink[k] = 1;
  const { labels, list } = components(ink, columns, rows, true);
  const keep = list.map(
    ({ box: [left, right, low, high] }) => Math.max(right - left, high - low) * step > LEAST_MARK,
  );
  for (let k = 0; k < ink.length; k++) if (ink[k] && !keep[labels[k]! - 1]) ink[k] = 0;
  return ink;
}

/** Regions farther than `bridge` from all ink that neither reach the rim nor the photo's edge. */
function enclosed(
  distance: Uint16Array,
  seen: Uint8Array,
  contrast: Uint8Array,
  grid: PlaneGrid,
  bridge: number,
  known: readonly RegionCandidate[],
): RegionCandidate[] {
  const { columns, rows, step } = grid;
  const reach = (3 * bridge) / step;
  const free = new Uint8Array(distance.length);
  for (let k = 0; k < free.length; k++) if (distance[k]! > reach) free[k] = 1;
  const { labels, list } = components(free, columns, rows, false);
  const open = new Set(list.filter((c) => c.touchesRim).map((c) => c.label));
  for (let k = 0; k < free.length; k++) if (free[k] && seen[k] === 0) open.add(labels[k]!);
  const found: RegionCandidate[] = [];
  for (const { label, cells, box } of list) {
    if (open.has(label) || cells * step * step < LEAST_AREA) continue;
    const area = cells * step * step;
    if (known.some((c) => Math.abs(c.area - area) < 0.006 * area && c.darkness > DARK_ENOUGH)) continue;
    const curves = regionCurves(labels, label, box, grid, bridge);
    if (curves.some((curve) => curve.length < 60)) continue;
    const darkness = Math.max(...curves.map((curve) => darknessUnder(curve, contrast, grid)));
    found.push({ curves, darkness, area });
  }
  return found;
}

/** The region's outer boundary, holes ignored, notches of handwriting bridged, moved out onto the ink. */
function regionCurves(
  labels: Int32Array,
  label: number,
  box: readonly [number, number, number, number],
  grid: PlaneGrid,
  bridge: number,
): PlanePoint[][] {
  const { step } = grid;
  const margin = Math.ceil((Math.max(...CLOSINGS) + bridge) / step) + 3;
  const [left, low] = [box[0] - margin, box[2] - margin];
  const columns = box[1] - box[0] + 1 + 2 * margin;
  const rows = box[3] - box[2] + 1 + 2 * margin;
  const inside = new Uint8Array(columns * rows);
  for (let j = box[2]; j <= box[3]; j++) {
    for (let i = box[0]; i <= box[1]; i++) {
      if (labels[j * grid.columns + i] === label) inside[(j - low) * columns + (i - left)] = 1;
    }
  }
  const near = distanceTo(inside, columns, rows);
  const cells = new Uint8Array(near.length);
  return CLOSINGS.map((closing) => {
    const grow = (3 * (closing + bridge)) / step;
    for (let k = 0; k < cells.length; k++) cells[k] = near[k]! <= grow ? 0 : 1;
    const depth = distanceTo(cells, columns, rows);
    for (let k = 0; k < cells.length; k++) cells[k] = depth[k]! > (3 * closing) / step ? 1 : 0;
    const boundary = outerBoundary(cells, columns).map((p) => ({
      x: grid.x + (p.x + left) * step,
      y: grid.y + (p.y + low) * step,
    }));
    return boundary.length < 8 ? [] : smoothClosed(resampleClosed(boundary, 2), 4);
  });
}

/** Mean over the curve of the darkest cell within 4 mm across it. */
function darknessUnder(curve: readonly PlanePoint[], contrast: Uint8Array, grid: PlaneGrid): number {
  let sum = 0;
  const reach = Math.round(4 / grid.step);
  for (let k = 0; k < curve.length; k += 2) {
    const i = Math.round((curve[k]!.x - grid.x) / grid.step);
    const j = Math.round((curve[k]!.y - grid.y) / grid.step);
    let most = 0;
    for (let b = Math.max(0, j - reach); b <= Math.min(grid.rows - 1, j + reach); b++) {
      for (let a = Math.max(0, i - reach); a <= Math.min(grid.columns - 1, i + reach); a++) {
        most = Math.max(most, contrast[b * grid.columns + a]!);
      }
    }
    sum += Math.min(most, 150);
  }
  return sum / (255 * Math.ceil(curve.length / 2));
}

/** Signed area by the shoelace sum, mm²; anticlockwise positive. @source sources.md#bourke-1988 */
export function enclosedArea(curve: readonly PlanePoint[]): number {
  let twice = 0;
  let from = curve.at(-1)!;
  for (const to of curve) {
    twice += from.x * to.y - to.x * from.y;
    from = to;
  }
  return twice / 2;
}

/** Drops candidates that nearly repeat a better one. */
function distinct(candidates: readonly RegionCandidate[]): RegionCandidate[] {
  const kept: RegionCandidate[] = [];
  for (const candidate of candidates) {
    const again = kept.some(
      (k) => Math.abs(k.area - candidate.area) < 0.015 * k.area && k.darkness >= candidate.darkness,
    );
    if (!again) kept.push(candidate);
  }
  return kept;
}

/** Points at equal spacing (about `spacing` mm) along a closed polyline. */
export function resampleClosed(points: readonly PlanePoint[], spacing: number): PlanePoint[] {
  const n = points.length;
  const lengths = points.map((p, i) =>
    Math.hypot(points[(i + 1) % n]!.x - p.x, points[(i + 1) % n]!.y - p.y),
  );
  const total = lengths.reduce((sum, length) => sum + length, 0);
  const count = Math.max(8, Math.round(total / spacing));
  const out: PlanePoint[] = [];
  let [edge, before] = [0, 0];
  for (let k = 0; k < count; k++) {
    const at = (k * total) / count;
    while (edge < n - 1 && before + lengths[edge]! < at) before += lengths[edge++]!;
    const t = lengths[edge]! > 0 ? (at - before) / lengths[edge]! : 0;
    const p = points[edge]!;
    const q = points[(edge + 1) % n]!;
    out.push({ x: p.x + t * (q.x - p.x), y: p.y + t * (q.y - p.y) });
  }
  return out;
}

/** Gaussian smoothing round a closed polyline; `sigma` in points. */
export function smoothClosed(points: readonly PlanePoint[], sigma: number): PlanePoint[] {
  const n = points.length;
  const reach = Math.ceil(3 * sigma);
  const kernel = Array.from({ length: 2 * reach + 1 }, (_, k) => Math.exp(-0.5 * ((k - reach) / sigma) ** 2));
  const total = kernel.reduce((sum, value) => sum + value, 0);
  return points.map((_, i) => {
    let [x, y] = [0, 0];
    for (let k = -reach; k <= reach; k++) {
      const p = points[(i + k + n * 4) % n]!;
      x += kernel[k + reach]! * p.x;
      y += kernel[k + reach]! * p.y;
    }
    return { x: x / total, y: y / total };
  });
}

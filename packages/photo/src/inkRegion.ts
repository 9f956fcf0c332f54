import { convexHull, resampleClosed, smoothClosed } from './closedCurve.ts';
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
/** Tried only when those enclose nothing: glare that swallows the line. */
const WIDE_BRIDGES = [30, 60];
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
  const scene: Scene = {
    grid,
    dark: pool(contrast, fine, grid, true),
    seen: pool(seen, fine, grid, false),
    covered: pool(covered, fine, grid, true),
  };
  const candidates: RegionCandidate[] = [];
  for (const [bridges, levels] of [
    [BRIDGES, LEVELS],
    [WIDE_BRIDGES, LEVELS.slice(0, 3)],
  ] as const) {
    for (const level of levels) {
      const ink = inkCells(scene.dark, grid, level);
      for (const walls of [false, true]) {
        const distance = distanceTo(walls ? either(ink, scene.covered) : ink, grid.columns, grid.rows);
        const toInk = walls ? distanceTo(ink, grid.columns, grid.rows) : undefined;
        for (const bridge of bridges)
          candidates.push(...enclosed(scene, distance, toInk, bridge, candidates));
        if (candidates.some((c) => c.darkness > DARK_ENOUGH)) return ranked(candidates);
      }
    }
    if (candidates.length > 0) break;
  }
  return ranked(candidates);
}

function ranked(candidates: readonly RegionCandidate[]): RegionCandidate[] {
  const value = (c: RegionCandidate) => Math.min(c.darkness, 0.55) * c.area ** 0.08;
  return distinct([...candidates].sort((a, b) => value(b) - value(a))).slice(0, 6);
}

/** The window on the coarse grid, one byte a cell. */
interface Scene {
  readonly grid: PlaneGrid;
  readonly dark: Uint8Array;
  readonly seen: Uint8Array;
  readonly covered: Uint8Array;
}

const either = (a: Uint8Array, b: Uint8Array) => {
  const out = Uint8Array.from(a);
  for (let k = 0; k < out.length; k++) if (b[k]) out[k] = 1;
  return out;
};

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

/**
 * Regions farther than `bridge` from all walls that neither reach the rim nor the photo's edge. With `toInk`
 * given, sheets were walls too, and the stretches of the boundary that follow them are cut straight across.
 */
function enclosed(
  scene: Scene,
  distance: Uint16Array,
  toInk: Uint16Array | undefined,
  bridge: number,
  known: readonly RegionCandidate[],
): RegionCandidate[] {
  const { grid, seen } = scene;
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
    const raw = regionCurves(labels, label, box, grid, bridge);
    const curves = toInk ? raw.map((curve) => acrossSheets(curve, toInk, grid, bridge)) : raw;
    if (curves.some((curve) => curve.length < 60)) continue;
    const darkness = Math.max(...curves.map((curve) => darknessUnder(curve, scene)));
    found.push({ curves, darkness, area });
  }
  return found;
}

/** Leaves out the stretches far from ink, which follow a sheet's edge, and closes the curve straight across. */
function acrossSheets(
  curve: readonly PlanePoint[],
  toInk: Uint16Array,
  grid: PlaneGrid,
  bridge: number,
): PlanePoint[] {
  const near = (3 * (bridge + 6)) / grid.step;
  const kept = curve.filter(({ x, y }) => {
    const i = Math.round((x - grid.x) / grid.step);
    const j = Math.round((y - grid.y) / grid.step);
    return toInk[j * grid.columns + i]! <= near;
  });
  return kept.length < curve.length / 4 ? [] : smoothClosed(resampleClosed(kept, 2), 2);
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
  const curves = CLOSINGS.map((closing) => {
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
  const hull = convexHull(curves[0]!);
  return [...curves, hull.length < 3 ? [] : smoothClosed(resampleClosed(hull, 2), 4)];
}

/**
 * Mean over the uncovered curve of the darkest cell within 4 mm across it, less for what is covered: a curve that
 * keeps to the sheets has little to show for itself.
 */
function darknessUnder(curve: readonly PlanePoint[], { dark, covered, grid }: Scene): number {
  let [sum, count] = [0, 0];
  const reach = Math.round(4 / grid.step);
  for (let k = 0; k < curve.length; k += 2) {
    const i = Math.round((curve[k]!.x - grid.x) / grid.step);
    const j = Math.round((curve[k]!.y - grid.y) / grid.step);
    if (covered[j * grid.columns + i]) continue;
    let most = 0;
    for (let b = Math.max(0, j - reach); b <= Math.min(grid.rows - 1, j + reach); b++) {
      for (let a = Math.max(0, i - reach); a <= Math.min(grid.columns - 1, i + reach); a++) {
        most = Math.max(most, dark[b * grid.columns + a]!);
      }
    }
    sum += Math.min(most, 150);
    count++;
  }
  return count === 0 ? 0 : (sum / (255 * count)) * ((2 * count) / curve.length) ** 3;
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

import { isBlackCell } from '../markerDictionary.ts';
import { markerCorner, PAPER } from '../referenceSheet.ts';
import { type Draw, smoothNoise } from './draw.ts';
import {
  coverage,
  depthIn,
  type Film,
  makeFilm,
  type Point,
  paintBox,
  paintStroke,
  type StrokePoint,
} from './film.ts';
import type { Xy } from './sceneOutline.ts';

export type Ground = 'table' | 'wood' | 'concrete' | 'mat' | 'stripes';

/** What lies under the film, and how much of it shows through. */
export function ground(random: Draw, kind: Ground): (x: number, y: number) => number {
  const noise = smoothNoise(random);
  if (kind === 'table') return (x, y) => 190 + 12 * noise(x / 90, y / 90);
  if (kind === 'concrete')
    return (x, y) =>
      95 + 60 * noise(x / 130, y / 110) + 25 * noise(x / 25 + 40, y / 22) + 12 * noise(x / 3, y / 3);
  if (kind === 'stripes') {
    const pitch = random.between(45, 80);
    return (x, y) => (((x % pitch) + pitch) % pitch < pitch / 2 ? 175 : 120) + 12 * noise(x / 4, y / 4);
  }
  if (kind === 'mat') {
    const near = (x: number, pitch: number) => Math.abs(x / pitch - Math.round(x / pitch)) * pitch;
    return (x, y) => {
      const bold = Math.min(near(x, 50), near(y, 50)) < 0.5;
      const fine = Math.min(near(x, 10), near(y, 10)) < 0.3;
      return (bold ? 150 : fine ? 120 : 95) + 8 * noise(x / 60, y / 60);
    };
  }
  const plank = random.between(95, 140);
  const first = random.between(0, plank);
  return (x, y) => {
    const row = Math.floor((y + first) / plank);
    const joint = Math.abs((y + first) / plank - Math.round((y + first) / plank)) * plank < 0.9;
    return joint ? 70 : 125 + 55 * noise(x / 210 + 37 * row, y / 4) + 25 * noise(x / 30, y / 1.5 + 9 * row);
  };
}

/** The ground with a milky film on part of it. */
export function filmOnGround(
  under: (x: number, y: number) => number,
  extent: Point,
  film: Point,
  haze: number,
  step: number,
): Film {
  return makeFilm(extent, step, (x, y) => {
    const inside = coverage(Math.min(film.x - Math.abs(x), film.y - Math.abs(y)), step);
    const bare = under(x, y);
    return bare + inside * haze * (215 - bare);
  });
}

export interface PlacedSheet extends Point {
  readonly index: number;
  readonly angle: number;
}

/** A point of the printed sheet (sheet frame, nominal mm) on the film. */
export function onSheet(sheet: PlacedSheet, scale: Xy, x: number, y: number): Point {
  const { width, height } = PAPER.A4;
  const [u, v] = [(x - width / 2) * scale[0], (y - height / 2) * scale[1]];
  const [c, s] = [Math.cos(sheet.angle), Math.sin(sheet.angle)];
  return { x: sheet.x + c * u - s * v, y: sheet.y + s * u + c * v };
}

/** White paper with a thin shadow, four markers, two bars. */
export function paintSheet(film: Film, sheet: PlacedSheet, scale: Xy): void {
  const { width, height } = PAPER.A4;
  const reach = Math.hypot(width, height) / 2 + 4;
  const box = [sheet.x - reach, sheet.y - reach, sheet.x + reach, sheet.y + reach] as const;
  const shadow = { x: sheet.x + 1, y: sheet.y - 1 };
  const [c, s] = [Math.cos(sheet.angle), Math.sin(sheet.angle)];
  paintBox(film, box, (x, y, old) => {
    const dark = Math.min(
      1,
      Math.max(0, depthIn({ x, y }, shadow, sheet.angle, width / 2 + 1.2, height / 2 + 1.2) / 2),
    );
    const paper = coverage(depthIn({ x, y }, sheet, sheet.angle, width / 2, height / 2), film.step);
    if (paper === 0) return old * (1 - 0.45 * dark);
    const u = (c * (x - sheet.x) + s * (y - sheet.y)) / scale[0] + width / 2;
    const v = (-s * (x - sheet.x) + c * (y - sheet.y)) / scale[1] + height / 2;
    return (
      old * (1 - 0.45 * dark) * (1 - paper) + paper * (238 - 210 * printAt(sheet.index, u, v, film.step))
    );
  });
}

/** Share of black at a point of a printed sheet, edges softened over one cell. */
function printAt(sheet: number, u: number, v: number, step: number): number {
  const { width, height } = PAPER.A4;
  const [a, b] = [u - width / 2, v - height / 2];
  if (Math.abs(a) < 100 && Math.abs(b) < 0.4) return 0.8;
  if (Math.abs(b) < 75 && Math.abs(a) < 0.4) return 0.8;
  for (let k = 0; k < 4; k++) {
    const corner = markerCorner('A4', k, 0);
    const [x, y] = [(u - corner.x) / 10, (corner.y - v) / 10];
    if (x < -0.2 || y < -0.2 || x > 6.2 || y > 6.2) continue;
    return markerBlack(4 * sheet + k, x, y, step / 10);
  }
  return 0;
}

function markerBlack(id: number, x: number, y: number, step: number): number {
  const black = (i: number, j: number) =>
    i >= 0 && j >= 0 && i < 6 && j < 6 && isBlackCell(id, j, i) ? 1 : 0;
  const [i, j] = [Math.round(x), Math.round(y)];
  const [right, below] = [coverage(x - i, step), coverage(y - j, step)];
  const row = (b: number) => (1 - right) * black(i - 1, b) + right * black(i, b);
  return (1 - below) * row(j - 1) + below * row(j);
}

export interface Pen {
  /** mm */
  readonly width: number;
  /** Standard deviation of the hand's sideways wobble, mm. */
  readonly wobble: number;
  readonly gaps: number;
  /** Longest break, mm. */
  readonly gap: number;
  readonly ink: number;
}

/** The traced line as a hand draws it: wavering a little, thicker where strokes meet, here and there broken. */
export function paintTracedLine(film: Film, random: Draw, line: readonly Xy[], pen: Pen): void {
  const noise = smoothNoise(random);
  const n = line.length;
  const breaks = Array.from({ length: pen.gaps }, () => ({
    at: random.whole(0, n - 1),
    long: random.between(5, pen.gap),
  }));
  const overlaps = Array.from({ length: 4 }, () => ({
    at: random.whole(0, n - 1),
    long: random.between(20, 70),
  }));
  // Even noise of mean 1/2; its standard deviation on this lattice is about 0.2.
  const sideways = (i: number) => ((noise(i / 25, 3.5) - 0.5) / 0.2) * pen.wobble;
  const fade = (i: number) => Math.min(1, Math.min(i, n - i) / 40);
  const within = (i: number, list: readonly { at: number; long: number }[]) =>
    list.some(({ at, long }) => Math.abs(i - at) < long / 2);
  const points = line.map(([x, y], i): StrokePoint => {
    const [p, q] = [line[(i + n - 1) % n]!, line[(i + 1) % n]!];
    const length = Math.hypot(q[0] - p[0], q[1] - p[1]) || 1;
    const d = sideways(i) * fade(i);
    const half = (pen.width / 2) * (0.92 + 0.16 * noise(i / 60, 90.5)) * (within(i, overlaps) ? 1.15 : 1);
    const density = within(i, breaks) ? 0 : 0.8 + 0.2 * noise(i / 45, 50.5);
    return { x: x - (d * (q[1] - p[1])) / length, y: y + (d * (q[0] - p[0])) / length, half, density };
  });
  paintStroke(film, [...points, points[0]!], pen.ink);
}

/** A word in a running hand: loops along a base line. */
export function paintWord(
  film: Film,
  random: Draw,
  at: Point,
  angle: number,
  size: number,
  letters: number,
): void {
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  const points: StrokePoint[] = [];
  let [tall, loop] = [1, 1];
  for (let i = 0; i <= 40 * letters; i++) {
    if (i % 40 === 0) [tall, loop] = [random.between(0.5, 1.6), random.between(0.1, 0.5)];
    const t = (2 * Math.PI * i) / 40;
    const u = size * (0.55 * (i / 40) + loop * Math.sin(t));
    const v = size * tall * (0.5 - 0.5 * Math.cos(t));
    points.push({ x: at.x + c * u - s * v, y: at.y + s * u + c * v, half: 1.1, density: 0.95 });
  }
  paintStroke(film, points, 40);
}

/** A strip of tape: pale, a little see-through. */
export function paintTape(film: Film, at: Point, angle: number, half: Point, tone: number): void {
  const reach = Math.hypot(half.x, half.y) + 1;
  paintBox(film, [at.x - reach, at.y - reach, at.x + reach, at.y + reach], (x, y, old) => {
    const inside = coverage(depthIn({ x, y }, at, angle, half.x, half.y), film.step);
    return old + 0.75 * inside * (tone - old);
  });
}

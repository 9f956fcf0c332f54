import { type DrawnArc as Arc, arcThrough } from '@panewright/drawing';
import type { Point } from '@panewright/geometry';
import type { Stroke } from './stroke.ts';

/** Plotter units of 0.025 mm. @source sources.md#hpgl-2 */
export const UNITS_PER_MM = 40;
/** Highest coordinate of the language, units: about 209 m. @source sources.md#hpgl-2 */
const MOST_UNITS = 8_388_607;
/** Farthest an arc instruction may leave its arc, mm: with it a piece stays within 0.025 mm. */
const ARC_ERROR = 0.022;
/** Farthest a chord may leave its arc, mm, before its ends are rounded. */
const SAG = 0.004;
/** Least chord angle a plotter need obey, degrees. @source sources.md#hpgl-2 */
const LEAST_CHORD = 0.36;
/** Pairs of coordinates in one instruction: short lines for old readers. */
const PAIRS = 24;

interface Units {
  readonly x: number;
  readonly y: number;
}

export type Pen = 1 | 2;

export interface PlotWriter {
  readonly pen: (pen: Pen) => void;
  readonly stroke: (stroke: Stroke) => void;
  /** Words in the plotter's letters from `at` to the right, capitals about `height` mm high. */
  readonly label: (words: string, at: Point, height: number) => void;
  readonly text: () => string;
}

/**
 * Writes HP-GL: whole plotter units, absolute. An arc is an AA where that keeps to it within 0.022 mm although its ends
 * and its centre are rounded and the plotter draws it in chords; else it is chords of our own.
 *
 * @accuracy 0.0177 mm for a point (half a unit each way), 0.025 mm for a curve
 * @source sources.md#hpgl-2
 */
export function plotWriter(): PlotWriter {
  const lines = ['IN;', 'PA;'];
  const say = (line: string) => lines.push(`${line};`);
  return {
    pen: (pen) => say(`SP${pen}`),
    stroke: (stroke) => writeStroke(stroke, say),
    label: (words, at, height) => {
      const { x, y } = units(at);
      // Letters are 0.7 as wide as high; words end with the character 3.
      say(`SI${((0.7 * height) / 10).toFixed(3)},${(height / 10).toFixed(3)}`);
      say(`PU${x},${y}`);
      lines.push(`LB${words.replace(/[^\x20-\x7e]/g, '?')}\x03`);
    },
    text: () => [...lines, 'PU0,0;', 'SP0;', ''].join('\n'),
  };
}

function writeStroke({ start, segments }: Stroke, say: (line: string) => void): void {
  let at = units(start);
  say(`PU${at.x},${at.y}`);
  let run: Units[] = [];
  const flush = () => {
    for (let i = 0; i < run.length; i += PAIRS)
      say(`PD${run.slice(i, i + PAIRS).map(({ x, y }) => `${x},${y}`)}`);
    run = [];
  };
  const lineTo = (to: Units) => {
    if (to.x !== at.x || to.y !== at.y) run.push(to);
    at = to;
  };
  let from = start;
  for (const one of segments) {
    const to = units(one.to);
    if (one.kind === 'line') lineTo(to);
    else {
      const arc = arcThrough(from, one.to, one.bulge);
      const written = arcInstruction(arc, at, to);
      if (written === undefined) for (const p of chords(arc, to)) lineTo(p);
      else {
        if (run.length === 0) say('PD');
        flush();
        say(written);
        // The plotter's own rounding of the arc's end is not relied on.
        run.push(to);
        at = to;
      }
    }
    from = one.to;
  }
  flush();
}

function units({ x, y }: Point): Units {
  const [ux, uy] = [Math.round(x * UNITS_PER_MM) + 0, Math.round(y * UNITS_PER_MM) + 0];
  for (const one of [ux, uy])
    if (!(Math.abs(one) <= MOST_UNITS))
      throw new RangeError(`A plotter file reaches 209 m; a point is at ${one / UNITS_PER_MM} mm.`);
  return { x: ux, y: uy };
}

/** Points round an arc, ends rounded. */
function chords({ centre, radius, start, sweep }: Arc, to: Units): Units[] {
  const step = 2 * Math.acos(Math.max(0, 1 - SAG / Math.max(radius, SAG)));
  const count = Math.max(1, Math.ceil(Math.abs(sweep) / step));
  return Array.from({ length: count }, (_, index) => {
    if (index === count - 1) return to;
    const angle = start + (sweep * (index + 1)) / count;
    return units({
      x: centre.x + radius * Math.cos(angle),
      y: centre.y + radius * Math.sin(angle),
    } as Point);
  });
}

/** The AA of an arc with the rounded centre that keeps nearest to it; undefined where none is near enough. */
function arcInstruction(arc: Arc, from: Units, to: Units): string | undefined {
  const chord =
    Math.floor((2 * Math.acos(Math.max(0, 1 - SAG / Math.max(arc.radius, SAG))) * 18000) / Math.PI) / 100;
  if (chord < LEAST_CHORD) return undefined;
  const near = { x: Math.round(arc.centre.x * UNITS_PER_MM), y: Math.round(arc.centre.y * UNITS_PER_MM) };
  let best: { readonly words: string; readonly error: number } | undefined;
  for (let dx = -1; dx <= 1; dx++)
    for (let dy = -1; dy <= 1; dy++) {
      const centre = { x: near.x + dx, y: near.y + dy };
      const degrees = sweepAbout(centre, from, to, arc.sweep);
      const error = errorOf(arc, centre, from, degrees) + SAG;
      if (best === undefined || error < best.error)
        best = { words: `AA${centre.x},${centre.y},${degrees},${Math.min(chord, 180)}`, error };
    }
  return best !== undefined && best.error <= ARC_ERROR ? best.words : undefined;
}

/** Degrees from one point to another about a centre, to four decimals, the way and the turns of `like`. */
function sweepAbout(centre: Units, from: Units, to: Units, like: number): number {
  const turn =
    Math.atan2(to.y - centre.y, to.x - centre.x) - Math.atan2(from.y - centre.y, from.x - centre.x);
  const whole = Math.round((like - turn) / (2 * Math.PI)) * 2 * Math.PI;
  return Number((((turn + whole) * 180) / Math.PI).toFixed(4));
}

/** Farthest the arc written is from the arc meant, mm, point against point along both. */
function errorOf({ centre, radius, start, sweep }: Arc, about: Units, from: Units, degrees: number): number {
  const reach = Math.hypot(from.x - about.x, from.y - about.y) / UNITS_PER_MM;
  const first = Math.atan2(from.y - about.y, from.x - about.x);
  let worst = 0;
  for (let i = 0; i <= 16; i++) {
    const meant = start + (sweep * i) / 16;
    const written = first + (((degrees * Math.PI) / 180) * i) / 16;
    worst = Math.max(
      worst,
      Math.hypot(
        about.x / UNITS_PER_MM + reach * Math.cos(written) - centre.x - radius * Math.cos(meant),
        about.y / UNITS_PER_MM + reach * Math.sin(written) - centre.y - radius * Math.sin(meant),
      ),
    );
  }
  return worst;
}

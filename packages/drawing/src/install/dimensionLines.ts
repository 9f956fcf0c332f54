import { movePoint, type Point, point } from '@panewright/geometry';
import { bareLengthText } from '../figures.ts';
import { STYLE } from '../ink.ts';
import type { SheetInput } from '../options.ts';
import { circle, line } from '../path.ts';
import type { Item, PathItem } from '../sheet.ts';
import { text } from '../text.ts';
import { distanceToSide, type MeasuredFrom, type Placed, type Side } from './holdTable.ts';

/** Room the dimensions take beside and below a view, mm on paper: fractions of an inch are long. */
export const DIMENSION_ROOM = { in: { side: 21, below: 25 }, mm: { side: 18, below: 19 } } as const;
/** From a measured side to the line its dimensions stand on, mm on paper: past the heavy stroke. */
const AXIS = 7.5;
/** From that line to its figures, and from one figure to the next, mm. */
const REACH = 3.2;
const PITCH = 4;
const FIGURE = 2.2;

export interface Dimensions {
  /** Thin lines from hold points to the dimension lines: labels keep clear of them. */
  readonly extensions: readonly PathItem[];
  readonly items: readonly Item[];
  /** Highest they reach, mm on the picture: crowded figures stand above a low view. */
  readonly top: number;
}

/** A value and where its extension line begins and meets the dimension line. */
interface Mark {
  readonly value: string;
  readonly from: Point;
  readonly tick: Point;
}

/**
 * Running dimensions of the hold points from the two measured sides, each value once: distances from the upright side on a
 * line below the view, distances from the lower side on a line beside it. Extension lines run parallel to the side that
 * is measured from, so every point of one has one distance from it.
 *
 * @param at takes the opening's frame to the picture's
 */
export function dimensionLines(
  one: Placed,
  from: MeasuredFrom,
  at: (p: Point) => Point,
  { options }: SheetInput,
): Dimensions {
  const points = (one.hold?.points ?? []).map(({ centre }) => movePoint(one.member.place, centre));
  if (points.length === 0) return { extensions: [], items: [], top: 0 };
  const [lower, across] = [sideOn(from.lower, at), sideOn(from.across, at)];
  const middle = at(average([...from.lower, from.across[1]]));
  const base = moved(lower, AXIS, middle);
  const post = moved(across, AXIS, middle);
  const marks = (measured: Side, along: Side, axis: Side): readonly Mark[] =>
    distinct(
      points.map((p) => ({
        value: bareLengthText(distanceToSide(p, measured), options.units),
        from: at(p),
        tick: meeting(at(p), along, axis),
      })),
    );
  const wide = marks(from.across, across, base).toSorted((a, b) => a.tick.x - b.tick.x);
  const high = marks(from.lower, lower, post).toSorted((a, b) => a.tick.y - b.tick.y);
  const corner = [meeting(lower[0], across, base), meeting(across[0], lower, post)] as const;
  return {
    extensions: [...wide, ...high].map((mark) => line(mark.from, mark.tick, STYLE.rule)),
    top: (apart(high.map(({ tick }) => tick.y)).at(-1) ?? 0) + FIGURE,
    items: [
      ...axisLine(corner[0], wide),
      ...axisLine(corner[1], high),
      ...belowFigures(wide, options),
      ...besideFigures(high, from.hand, options),
    ],
  };
}

const sideOn = ([a, b]: Side, at: (p: Point) => Point): Side => [at(a), at(b)];

const average = (all: readonly Point[]): Point =>
  point(all.reduce((sum, p) => sum + p.x, 0) / all.length, all.reduce((sum, p) => sum + p.y, 0) / all.length);

/** A side moved outward, away from the middle of the view. */
function moved([a, b]: Side, by: number, middle: Point): Side {
  const length = Math.hypot(b.x - a.x, b.y - a.y);
  const normal = { x: (b.y - a.y) / length, y: (a.x - b.x) / length };
  const inward = normal.x * (middle.x - a.x) + normal.y * (middle.y - a.y) > 0;
  const off = inward ? -by : by;
  const move = (p: Point) => point(p.x + off * normal.x, p.y + off * normal.y);
  return [move(a), move(b)];
}

/** Where a line through a point, parallel to one side, meets another side's line. */
function meeting(p: Point, [a, b]: Side, [c, d]: Side): Point {
  const [ux, uy, vx, vy] = [b.x - a.x, b.y - a.y, d.x - c.x, d.y - c.y];
  const t = ((c.x - p.x) * vy - (c.y - p.y) * vx) / (ux * vy - uy * vx);
  return point(p.x + t * ux, p.y + t * uy);
}

/** One mark for a value, from the point nearest to the dimension line. */
function distinct(marks: readonly Mark[]): readonly Mark[] {
  const found = new Map<string, Mark>();
  const away = ({ from, tick }: Mark) => Math.hypot(from.x - tick.x, from.y - tick.y);
  for (const mark of marks) {
    const known = found.get(mark.value);
    if (known === undefined || away(mark) < away(known)) found.set(mark.value, mark);
  }
  return [...found.values()];
}

/** From the measured side, ringed, to the farthest mark. */
function axisLine(origin: Point, marks: readonly Mark[]): readonly Item[] {
  const away = ({ tick }: Mark) => Math.hypot(tick.x - origin.x, tick.y - origin.y);
  const far = marks.reduce((best, one) => (away(one) > away(best) ? one : best));
  return [
    line(origin, far.tick, STYLE.dimension),
    circle(origin, 0.8, { line: STYLE.dimension }),
    ...marks.map(({ tick }) => circle(tick, 0.45, { fill: STYLE.dimension.colour })),
  ];
}

/** Figures under the line, turned upright, pushed apart where they are close. */
function belowFigures(marks: readonly Mark[], { metrics }: SheetInput['options']): readonly Item[] {
  const places = apart(marks.map(({ tick }) => tick.x));
  const low = Math.min(...marks.map(({ tick }) => tick.y)) - REACH;
  return marks.flatMap(({ value, tick }, index) => [
    line(tick, point(places[index]!, low), STYLE.rule),
    text(value, point(places[index]! + FIGURE / 2, low - 0.7), metrics, {
      ...{ capital: FIGURE, anchor: 'end', turn: Math.PI / 2 },
    }),
  ]);
}

function besideFigures(
  marks: readonly Mark[],
  hand: MeasuredFrom['hand'],
  { metrics }: SheetInput['options'],
): readonly Item[] {
  const places = apart(marks.map(({ tick }) => tick.y));
  const sign = hand === 'left' ? -1 : 1;
  const edge = sign * Math.max(...marks.map(({ tick }) => sign * tick.x)) + sign * REACH;
  return marks.flatMap(({ value, tick }, index) => [
    line(tick, point(edge, places[index]!), STYLE.rule),
    text(value, point(edge + sign * 0.7, places[index]! - FIGURE / 2), metrics, {
      ...{ capital: FIGURE, anchor: hand === 'left' ? 'end' : 'start' },
    }),
  ]);
}

/** Places near the wanted ones, in their order, no two closer than PITCH: runs that are too close spread about their middle. */
export function apart(wanted: readonly number[]): readonly number[] {
  const runs: { readonly members: number[] }[] = [];
  const middle = ({ members }: { readonly members: readonly number[] }) =>
    members.reduce((sum, one) => sum + one, 0) / members.length;
  const reach = ({ members }: { readonly members: readonly number[] }) => ((members.length - 1) * PITCH) / 2;
  for (const value of wanted) {
    runs.push({ members: [value] });
    while (runs.length > 1) {
      const [before, last] = [runs.at(-2)!, runs.at(-1)!];
      if (middle(before) + reach(before) + PITCH <= middle(last) - reach(last) + 1e-9) break;
      before.members.push(...last.members);
      runs.pop();
    }
  }
  return runs.flatMap((run) => run.members.map((_, index) => middle(run) - reach(run) + index * PITCH));
}

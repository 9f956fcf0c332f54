import { edges, length, nearest, normalAt, type Outline, type Point, pointAt } from '@panewright/geometry';
import { mm } from '@panewright/quantity';
import { type Corner, cornersAndSides, type Side } from '../panels/cornersAndEdges.ts';
import type { Foot } from './holdPoints.ts';

/** The panel a layout is made for. */
export interface Rim {
  readonly finished: Outline;
  /** One per segment of `finished`. */
  readonly edgeNames: readonly string[];
}

/** From one outward corner to the next: one side, or several that meet at corners that point into the panel. */
export interface Run {
  readonly sides: readonly { readonly side: Side; readonly name: string; readonly from: number }[];
  /** Between the sharp corners, mm. */
  readonly length: number;
  /** The corners it begins and ends at. */
  readonly from: Corner;
  readonly to: Corner;
}

/** Fewest hold points on an outline without corners. Common practice, no source. */
export const LEAST_ROUND = 3;

/** The runs of a panel in order round it, the first from the corner nearest the bottom left. */
export function runsOf(rim: Rim): readonly Run[] {
  const { sides } = cornersAndSides(rim.finished);
  if (sides.length === 0) return [];
  const outward = sides.map((side, k) => ({ side, k })).filter(({ side }) => side.from.turn > 0);
  if (outward.length === 0) return [];
  const sum = ({ at }: Corner) => at.x + at.y;
  const first = outward.reduce((a, b) => (sum(b.side.from) < sum(a.side.from) - 1e-6 ? b : a)).k;
  const ordered = [...sides.slice(first), ...sides.slice(0, first)];
  const runs: Run[] = [];
  let part: Side[] = [];
  for (const side of ordered) {
    part.push(side);
    if (side.to.turn <= 0) continue;
    runs.push(runOf(part, rim));
    part = [];
  }
  return runs;
}

function runOf(sides: readonly Side[], rim: Rim): Run {
  let from = 0;
  const parts = sides.map((side) => {
    const part = { side, name: sideName(side, rim), from };
    from += side.length;
    return part;
  });
  return { sides: parts, length: from, from: sides[0]!.from, to: sides.at(-1)!.to };
}

const sideName = (side: Side, rim: Rim): string => rim.edgeNames[side.segments[0] ?? side.from.segment] ?? '';

/** The name of a corner, as the plan's hold points have it. */
export function cornerName(corner: Corner, rim: Rim): string {
  const name = rim.edgeNames[corner.segment]!;
  const next = rim.edgeNames[(corner.segment + 1) % rim.edgeNames.length]!;
  return corner.round ? name : `corner:${name}-${next}`;
}

export function cornerFoot(corner: Corner, rim: Rim): Foot {
  return { kind: 'corner', on: cornerName(corner, rim), s: corner.s, at: corner.at, inward: corner.inward };
}

/** The foot at a distance along a run, square to the edge. */
export function footOnRun(run: Run, t: number, rim: Rim): Foot {
  const part = run.sides.findLast(({ from }) => from <= t + 1e-9) ?? run.sides[0]!;
  const { side } = part;
  const along = Math.min(Math.max(t - part.from - side.from.setback, 0), side.run);
  return footAt((side.start + along) % length(rim.finished), part.name, rim);
}

function footAt(s: number, on: string, rim: Rim): Foot {
  const normal = normalAt(rim.finished, mm(s));
  return {
    kind: 'edge',
    on,
    s,
    at: pointAt(rim.finished, mm(s)),
    inward: Math.atan2(-normal.y, -normal.x),
  };
}

/** On an outline without corners: a distance from its lowest point. */
export function footAllRound(rim: Rim): (t: number) => Foot {
  const lowest: Point = edges(rim.finished).reduce((a, b) => (b.from.y < a.from.y ? b : a)).from;
  const first = nearest(rim.finished, lowest).s;
  const total = length(rim.finished);
  return (t) => {
    const s = (first + t) % total;
    const at = pointAt(rim.finished, mm(s));
    return footAt(s, rim.edgeNames[nearest(rim.finished, at).segment]!, rim);
  };
}

/** Where along which run a hand-placed distance on a named edge lies; undefined where there is no such edge. */
export function onRuns(
  runs: readonly Run[],
  on: string,
  at: number,
): { readonly run: number; readonly t: number } | undefined {
  for (const [run, { sides }] of runs.entries())
    for (const { side, name, from } of sides)
      if (name === on && at >= 0 && at <= side.length) return { run, t: from + at };
  return undefined;
}

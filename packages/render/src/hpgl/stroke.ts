import { arcThrough } from '@panewright/drawing';
import { type Outline, type Point, point, type Segment } from '@panewright/geometry';

/** What a tool follows without being lifted. Lines and arcs from `start`, mm. */
export interface Stroke {
  readonly start: Point;
  readonly segments: readonly Segment[];
}

export const bulgeOf = (segment: Segment): number => (segment.kind === 'arc' ? segment.bulge : 0);

const segment = (to: Point, bulge: number): Segment =>
  bulge === 0 ? { kind: 'line', to } : { kind: 'arc', to, bulge };

/** The point a share of the way along a segment. */
export function pointAlong(from: Point, one: Segment, share: number): Point {
  if (one.kind === 'line')
    return point(from.x + (one.to.x - from.x) * share, from.y + (one.to.y - from.y) * share);
  const { centre, radius, start, sweep } = arcThrough(from, one.to, one.bulge);
  const angle = start + sweep * share;
  return point(centre.x + radius * Math.cos(angle), centre.y + radius * Math.sin(angle));
}

/** The parts of a segment before and after a point a share of the way along it. */
export function divided(from: Point, one: Segment, share: number): readonly [Segment, Segment] {
  const middle = pointAlong(from, one, share);
  const part = (of: number) => Math.tan(Math.atan(bulgeOf(one)) * of);
  return [segment(middle, part(share)), segment(one.to, part(1 - share))];
}

export function lengthOf(from: Point, one: Segment): number {
  if (one.kind === 'line') return Math.hypot(one.to.x - from.x, one.to.y - from.y);
  const { radius, sweep } = arcThrough(from, one.to, one.bulge);
  return radius * Math.abs(sweep);
}

/** Direction of travel at the beginning or the end of a segment, radians: an arc leaves its chord by half its sweep. */
export function headingOf(from: Point, one: Segment, end: 'start' | 'end'): number {
  const half = 2 * Math.atan(bulgeOf(one));
  return Math.atan2(one.to.y - from.y, one.to.x - from.x) + (end === 'start' ? -half : half);
}

/** Middles of an outline's segments: where a cut may begin, away from every corner. */
export function beginnings(outline: Outline): readonly Point[] {
  let from = outline.segments.at(-1)!.to;
  return outline.segments.map((one) => {
    const middle = pointAlong(from, one, 0.5);
    from = one.to;
    return middle;
  });
}

/** Once round an outline from the middle of segment `index`, and on over its beginning by `overcut` mm. */
export function roundFrom(outline: Outline, index: number, overcut: number): Stroke {
  const { segments } = outline;
  const own = segments[index]!;
  const before = segments.at(index - 1)!.to;
  const [first, second] = divided(before, own, 0.5);
  const ring = [second, ...segments.slice(index + 1), ...segments.slice(0, index), first];
  return { start: first.to, segments: [...ring, ...lead(first.to, ring, overcut)] };
}

/** The first `length` mm of a ring, once round at the most. */
function lead(start: Point, ring: readonly Segment[], length: number): readonly Segment[] {
  const taken: Segment[] = [];
  let from = start;
  let left = length;
  for (const one of ring) {
    if (left <= 1e-9) break;
    const whole = lengthOf(from, one);
    taken.push(left >= whole ? one : divided(from, one, left / whole)[0]);
    left -= whole;
    from = one.to;
  }
  return taken;
}

import { type Millimetre, mm, ok, type Result, refuse, type SquareMillimetre } from '@panewright/quantity';
import { area } from './area.ts';
import { contactsOf } from './contacts.ts';
import { type Curve, curvesOf } from './curve.ts';
import type { Outline, Point, Segment } from './outline.ts';
import { eachNearPair } from './pairs.ts';
import { point } from './point.ts';
import { SAME_POINT } from './tolerance.ts';

/** `where` is the segment's index; two of them where two segments are at odds. */
export type OutlineRefusal =
  | { readonly code: 'OUTLINE_EMPTY' }
  | { readonly code: 'SEGMENT_NOT_FINITE'; readonly where: number }
  | { readonly code: 'BULGE_ZERO'; readonly where: number }
  | { readonly code: 'SEGMENT_TOO_SHORT'; readonly where: number; readonly length: Millimetre }
  | { readonly code: 'OUTLINE_CROSSES_ITSELF'; readonly where: readonly [number, number]; readonly at: Point }
  | { readonly code: 'OUTLINE_CLOCKWISE'; readonly area: SquareMillimetre };

/**
 * Whether segments make an outline the rest of this package can vouch for: finite, no segment shorter than 1e-6 mm,
 * no arc without bulge, nowhere touching or crossing itself, anticlockwise. It is closed by its shape.
 *
 * @returns the outline itself
 * @refuses OUTLINE_EMPTY, SEGMENT_NOT_FINITE, BULGE_ZERO, SEGMENT_TOO_SHORT, OUTLINE_CROSSES_ITSELF (the crossing that
 *   comes first along the outline), OUTLINE_CLOCKWISE, in this order
 * @source exact crossings of lines and circles, found by a sweep over boxes
 */
export function validate(outline: {
  readonly segments: readonly Segment[];
}): Result<Outline, OutlineRefusal> {
  const { segments } = outline;
  if (!isOutline(outline)) return refuse({ code: 'OUTLINE_EMPTY' });
  const wrong = segments.findIndex((s) => !hasNumbers(s));
  if (wrong >= 0) return refuse({ code: 'SEGMENT_NOT_FINITE', where: wrong });
  const straight = segments.findIndex((s) => s.kind === 'arc' && s.bulge === 0);
  if (straight >= 0) return refuse({ code: 'BULGE_ZERO', where: straight });
  const curves = curvesOf(outline);
  const short = curves.findIndex((c) => Math.hypot(c.bx - c.ax, c.by - c.ay) < SAME_POINT);
  if (short >= 0)
    return refuse({ code: 'SEGMENT_TOO_SHORT', where: short, length: mm(curves[short]!.length) });
  const crossing = firstCrossing(curves);
  if (crossing) return refuse(crossing);
  const enclosed = area(outline);
  return enclosed > 0 ? ok(outline) : refuse({ code: 'OUTLINE_CLOCKWISE', area: enclosed });
}

function isOutline(outline: { readonly segments: readonly Segment[] }): outline is Outline {
  return outline.segments.length > 0;
}

function hasNumbers(segment: Segment): boolean {
  const bulge = segment.kind === 'arc' ? segment.bulge : 0;
  return [segment.to.x, segment.to.y, bulge].every(Number.isFinite);
}

type Crossing = Extract<OutlineRefusal, { code: 'OUTLINE_CROSSES_ITSELF' }>;

function firstCrossing(curves: readonly Curve[]): Crossing | undefined {
  let first: Crossing | undefined;
  eachNearPair(curves, SAME_POINT, (i, j) => {
    if (first && (first.where[0] < i || (first.where[0] === i && first.where[1] <= j))) return;
    const at = strayContact(curves, i, j);
    if (at) first = { code: 'OUTLINE_CROSSES_ITSELF', where: [i, j], at };
  });
  return first;
}

/** A point two edges share although the outline does not pass from one to the other there. */
function strayContact(curves: readonly Curve[], i: number, j: number): Point | undefined {
  const [c, d] = [curves[i]!, curves[j]!];
  const corners: Point[] = [];
  if ((i + 1) % curves.length === j) corners.push(point(c.bx, c.by));
  if ((j + 1) % curves.length === i) corners.push(point(d.bx, d.by));
  const stray = contactsOf(c, d, SAME_POINT).find(
    (p) => !corners.some((corner) => Math.hypot(p.x - corner.x, p.y - corner.y) < 2 * SAME_POINT),
  );
  return stray && point(stray.x, stray.y);
}

import { arcThrough } from '@panewright/drawing';
import { type Point, point, type Segment } from '@panewright/geometry';
import { bulgeOf, headingOf, type Stroke } from './stroke.ts';

/** A blade need not be turned for less than this, mm at its axis. */
const SMALL_TURN = 0.005;

/**
 * The way of a blade's axis whose tip follows a stroke. The tip trails the axis by `offset` along its own direction, so a
 * line is run past its end, an arc is run on a larger circle about the same centre, and at a corner the axis goes round
 * the tip. Arcs stay arcs.
 *
 * @param from direction of the blade as it is put down, radians
 * @returns the stroke of the axis, mm, and the direction of the blade at its end
 * @source the tangent from the tip to the axis has the length of the offset: R² = r² + offset², ahead by atan(offset / r)
 */
export function knifePath(
  tip: Stroke,
  offset: number,
  from: number,
): { readonly axis: Stroke; readonly heading: number } {
  const ahead = (p: Point, heading: number) =>
    point(p.x + offset * Math.cos(heading), p.y + offset * Math.sin(heading));
  const segments: Segment[] = [];
  let at = tip.start;
  let heading = from;
  for (const one of tip.segments) {
    const next = headingOf(at, one, 'start');
    const turn = Math.atan2(Math.sin(next - heading), Math.cos(next - heading));
    if (Math.abs(turn) * offset > SMALL_TURN)
      segments.push({ kind: 'arc', to: ahead(at, next), bulge: Math.tan(turn / 4) });
    heading = headingOf(at, one, 'end');
    segments.push(shifted(at, one, offset, ahead(one.to, heading)));
    at = one.to;
  }
  return { axis: { start: ahead(tip.start, from), segments }, heading };
}

/** One segment of the tip's way as the axis runs it. Both arcs have one centre and one sweep, so one bulge. */
function shifted(from: Point, one: Segment, offset: number, to: Point): Segment {
  const bulge = bulgeOf(one);
  if (bulge === 0) return { kind: 'line', to };
  const { centre, radius, start, sweep } = arcThrough(from, one.to, bulge);
  const reach = Math.hypot(radius, offset);
  const angle = start + sweep + Math.sign(sweep) * Math.atan2(offset, radius);
  const end = point(centre.x + reach * Math.cos(angle), centre.y + reach * Math.sin(angle));
  return { kind: 'arc', to: end, bulge };
}

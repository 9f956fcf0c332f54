import { arcThrough, type PathItem } from '@panewright/drawing';
import type { Outline, Point } from '@panewright/geometry';
import { num } from '../number.ts';

/** Takes a point of the drawing (y up) to the file (y down). */
export type ToFile = (at: Point) => { readonly x: number; readonly y: number };

/** Farthest a reader's own curve may leave an arc, mm. */
const READER_ERROR = 0.002;

/**
 * Path data of line and arc segments. Arcs stay arcs. A half turn or more is written as two, so that no reader has to
 * guess which way round; a large arc as several, since readers draw each as a cubic curve, which over a quarter turn is
 * out by 2.7e-4 of the radius: 0.04 mm at 144 mm, seen in a browser.
 *
 * @source sources.md#svg2-paths, sources.md#goldapp-1991
 */
export function pathData(path: Pick<PathItem, 'start' | 'segments' | 'closed'>, toFile: ToFile): string {
  const pair = (at: Point) => {
    const { x, y } = toFile(at);
    return `${num(x)} ${num(y)}`;
  };
  let from = path.start;
  const parts = [`M${pair(from)}`];
  for (const segment of path.segments) {
    if (segment.kind === 'line') parts.push(`L${pair(segment.to)}`);
    else parts.push(...arcs(from, segment.to, segment.bulge, pair));
    from = segment.to;
  }
  if (path.closed) parts.push('Z');
  return parts.join('');
}

function arcs(from: Point, to: Point, bulge: number, pair: (at: Point) => string): string[] {
  const { centre, radius, start, sweep } = arcThrough(from, to, bulge);
  // Anticlockwise with y up is still anticlockwise to the eye: flag 0 with y down.
  const flag = sweep > 0 ? 0 : 1;
  // SVG gives an arc by its rounded radius: near a half turn the arc would drift, within a quarter it holds to 0.001 mm.
  const quarters = Math.abs(sweep) / (Math.PI / 2);
  const count = Math.max(
    ...[1, Math.ceil(quarters - 1e-9)],
    Math.ceil(quarters * ((2.8e-4 * radius) / READER_ERROR) ** (1 / 6)),
  );
  return Array.from({ length: count }, (_, index) => {
    const angle = start + (sweep * (index + 1)) / count;
    const end =
      index === count - 1
        ? to
        : ({ x: centre.x + radius * Math.cos(angle), y: centre.y + radius * Math.sin(angle) } as Point);
    return `A${num(radius)} ${num(radius)} 0 0 ${flag} ${pair(end)}`;
  });
}

export const outlineData = (outline: Outline, toFile: ToFile): string =>
  pathData({ start: outline.segments.at(-1)!.to, segments: outline.segments, closed: true }, toFile);

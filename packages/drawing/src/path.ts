import { type Outline, type Point, point, type Segment } from '@panewright/geometry';
import type { GroupItem, Item, Layer, LineStyle, PathItem, Rectangle, TextItem } from './sheet.ts';

type Look = { readonly line?: LineStyle; readonly fill?: string };

export const line = (from: Point, to: Point, style: LineStyle): PathItem => ({
  kind: 'path',
  start: from,
  segments: [{ kind: 'line', to }],
  closed: false,
  line: style,
});

/** Shorthand for a straight line by its four coordinates, mm. */
export const lineAt = (x1: number, y1: number, x2: number, y2: number, style: LineStyle): PathItem =>
  line(point(x1, y1), point(x2, y2), style);

export const polygon = (points: readonly Point[], look: Look): PathItem => ({
  kind: 'path',
  start: points.at(-1)!,
  segments: points.map((to) => ({ kind: 'line', to })),
  closed: true,
  ...look,
});

export const rectangle = ({ x, y, width, height }: Rectangle, look: Look): PathItem =>
  polygon([point(x + width, y), point(x + width, y + height), point(x, y + height), point(x, y)], look);

/** Two half circles: an arc of a full turn has no bulge. */
export const circle = (centre: Point, radius: number, look: Look): PathItem => ({
  kind: 'path',
  start: point(centre.x + radius, centre.y),
  segments: [
    { kind: 'arc', to: point(centre.x - radius, centre.y), bulge: 1 },
    { kind: 'arc', to: point(centre.x + radius, centre.y), bulge: 1 },
  ],
  closed: true,
  ...look,
});

export const outlinePath = (outline: Outline, look: Look): PathItem => ({
  kind: 'path',
  start: outline.segments.at(-1)!.to,
  segments: outline.segments,
  closed: true,
  ...look,
});

export const group = (layer: Layer, items: readonly Item[]): GroupItem => ({ kind: 'group', layer, items });

/** A change of scale, turn, side and place: mirrored first (x to -x), then turned, scaled, shifted. */
export interface Placing {
  readonly mirrored?: boolean;
  /** Radians anticlockwise. */
  readonly turn?: number;
  readonly scale?: number;
  readonly x?: number;
  readonly y?: number;
}

export function placePoint(at: Point, placing: Placing): Point {
  const { mirrored = false, turn = 0, scale = 1, x = 0, y = 0 } = placing;
  const px = mirrored ? -at.x : at.x;
  const cos = Math.cos(turn);
  const sin = Math.sin(turn);
  return point(scale * (cos * px - sin * at.y) + x, scale * (sin * px + cos * at.y) + y);
}

export function placePath(path: PathItem, placing: Placing): PathItem {
  return {
    ...path,
    start: placePoint(path.start, placing),
    segments: path.segments.map((segment) => placeSegment(segment, placing)),
  };
}

function placeSegment(segment: Segment, placing: Placing): Segment {
  const to = placePoint(segment.to, placing);
  if (segment.kind === 'line') return { kind: 'line', to };
  return { kind: 'arc', to, bulge: placing.mirrored ? -segment.bulge : segment.bulge };
}

/** Moves whole drawings: text keeps its size and is turned, never mirrored. */
export function shiftItems(items: readonly Item[], dx: number, dy: number): Item[] {
  const move = (p: Point) => point(p.x + dx, p.y + dy);
  return items.map((item): Item => {
    if (item.kind === 'path') return placePath(item, { x: dx, y: dy });
    if (item.kind === 'text') return { ...item, at: move(item.at) };
    if (item.kind === 'group') return { ...item, items: shiftItems(item.items, dx, dy) };
    if (item.kind === 'image') return { ...item, at: move(item.at) };
    const { window } = item;
    return window === undefined
      ? { ...item, at: move(item.at) }
      : { ...item, at: move(item.at), window: { ...window, x: window.x + dx, y: window.y + dy } };
  });
}

/** Whole drawings made larger about the origin, lines and letters with them. Not for drawings that use symbols. */
export function enlarged(items: readonly Item[], scale: number): readonly Item[] {
  if (scale === 1) return items;
  return items.map((item): Item => {
    if (item.kind === 'group') return { ...item, items: enlarged(item.items, scale) };
    if (item.kind === 'text') return { ...item, at: placePoint(item.at, { scale }), size: item.size * scale };
    if (item.kind === 'image')
      return {
        ...{ ...item, at: placePoint(item.at, { scale }) },
        ...{ width: item.width * scale, height: item.height * scale },
      };
    if (item.kind === 'use') throw new Error('A drawing that uses symbols cannot be enlarged.');
    const path = placePath(item, { scale });
    return path.line === undefined ? path : { ...path, line: heavier(path.line, scale) };
  });
}

const heavier = (style: LineStyle, scale: number): LineStyle => ({
  ...style,
  weight: style.weight * scale,
  ...(style.dash ? { dash: style.dash.map((one) => one * scale) } : {}),
});

export interface Arc {
  readonly centre: Point;
  readonly radius: number;
  readonly start: number;
  readonly sweep: number;
}

/**
 * Centre, radius and angles of an arc from its ends and bulge.
 *
 * @returns mm and radians; sweep anticlockwise positive
 * @source chord and bulge to radius and sweep: sources.md#dxf-bulge
 */
export function arcThrough(from: Point, to: Point, bulge: number): Arc {
  const dx = to.x - from.x;
  const dy = to.y - from.y;
  const lift = (1 - bulge * bulge) / (4 * bulge);
  const centre = point((from.x + to.x) / 2 - dy * lift, (from.y + to.y) / 2 + dx * lift);
  return {
    centre,
    radius: (Math.hypot(dx, dy) * (1 + bulge * bulge)) / (4 * Math.abs(bulge)),
    start: Math.atan2(from.y - centre.y, from.x - centre.x),
    sweep: 4 * Math.atan(bulge),
  };
}

/** Points along a path, each arc cut into chords that leave it by no more than `sag` mm. */
export function flattenPath(path: PathItem, sag = 0.05): Point[] {
  const points = [path.start];
  let from = path.start;
  for (const segment of path.segments) {
    if (segment.kind === 'arc') {
      const { centre, radius, start, sweep } = arcThrough(from, segment.to, segment.bulge);
      const step = 2 * Math.acos(Math.max(0, 1 - sag / Math.max(radius, sag)));
      const chords = Math.max(1, Math.ceil(Math.abs(sweep) / step));
      for (let i = 1; i < chords; i++) {
        const angle = start + (sweep * i) / chords;
        points.push(point(centre.x + radius * Math.cos(angle), centre.y + radius * Math.sin(angle)));
      }
    }
    points.push(segment.to);
    from = segment.to;
  }
  if (path.closed && (from.x !== path.start.x || from.y !== path.start.y)) points.push(path.start);
  return points;
}

export interface Box {
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}

/** Box around points; infinite the wrong way round for none. */
export function boxOfPoints(points: readonly Point[]): Box {
  let [minX, minY, maxX, maxY] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const { x, y } of points) {
    minX = Math.min(minX, x);
    minY = Math.min(minY, y);
    maxX = Math.max(maxX, x);
    maxY = Math.max(maxY, y);
  }
  return { minX, minY, maxX, maxY };
}

export const boxOfPath = (path: PathItem): Box => boxOfPoints(flattenPath(path, 0.01));

export const joinBoxes = (boxes: readonly Box[]): Box =>
  boxOfPoints(boxes.flatMap((b) => [point(b.minX, b.minY), point(b.maxX, b.maxY)]));

export const isText = (item: Item): item is TextItem => item.kind === 'text';

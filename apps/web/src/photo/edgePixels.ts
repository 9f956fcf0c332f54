import {
  arcOf,
  type Edge,
  edges,
  filmPointAt,
  type Outline,
  type PhotoView,
  type Pixel,
  pixelOf,
  point,
} from '../contract.ts';

type XY = { readonly x: number; readonly y: number };

/** Points of an edge this close together, mm: the lens bends what is straight on the film. */
const STEP = 12;

/** An edge as the photo shows it: pixels along it, its ends included. */
export function edgePixels(view: PhotoView, edge: Edge): readonly Pixel[] {
  const count = Math.max(2, Math.min(200, Math.ceil(edge.length / STEP)));
  return Array.from({ length: count + 1 }, (_, k) => pixelOf(view, along(edge, k / count))).filter(
    (pixel) => pixel !== undefined,
  );
}

/** The point part of the way along an edge. */
export function along(edge: Edge, share: number): XY {
  const arc = arcOf(edge);
  if (!arc)
    return point(
      edge.from.x + (edge.to.x - edge.from.x) * share,
      edge.from.y + (edge.to.y - edge.from.y) * share,
    );
  const angle = arc.start + arc.sweep * share;
  return point(arc.centre.x + arc.radius * Math.cos(angle), arc.centre.y + arc.radius * Math.sin(angle));
}

/** Unit normal that points out of the outline, amid an edge. */
export function outward({ from, to }: Edge): XY {
  const length = Math.hypot(to.x - from.x, to.y - from.y);
  return { x: (to.y - from.y) / length, y: (from.x - to.x) / length };
}

/** How far out of the outline two pixels lie apart on the film, along an edge's normal, mm. */
export function outwardBetween(view: PhotoView, edge: Edge, from: Pixel, to: Pixel): number | undefined {
  const [a, b] = [filmPointAt(view, from), filmPointAt(view, to)];
  if (!a || !b) return undefined;
  const normal = outward(edge);
  return (b.x - a.x) * normal.x + (b.y - a.y) * normal.y;
}

/** Direction on the photo in which an edge goes outward: a unit vector, y down. */
export function outwardOnPhoto(view: PhotoView, edge: Edge): XY {
  const middle = along(edge, 0.5);
  const normal = outward(edge);
  const [a, b] = [pixelOf(view, middle), pixelOf(view, { x: middle.x + normal.x, y: middle.y + normal.y })];
  if (!a || !b) return { x: 0, y: 0 };
  const length = Math.hypot(b.x - a.x, b.y - a.y);
  return { x: (b.x - a.x) / length, y: (b.y - a.y) / length };
}

/** Millimetres of film that one pixel of the photo shows at an edge's middle. */
export function pixelSize(view: PhotoView, edge: Edge): number {
  const middle = along(edge, 0.5);
  const at = pixelOf(view, middle);
  const next = at && filmPointAt(view, { x: at.x + 1, y: at.y });
  const side = at && filmPointAt(view, { x: at.x, y: at.y + 1 });
  if (!next || !side) return 1;
  return Math.max(
    Math.hypot(next.x - middle.x, next.y - middle.y),
    Math.hypot(side.x - middle.x, side.y - middle.y),
  );
}

export const edgesOf = (outline: Outline): readonly Edge[] => edges(outline);

/** A hand puts a line within two dots of the screen, and no better than half a millimetre: an estimate. */
const HAND_DOTS = 2;
const LEAST_HAND = 0.5;

/** How well a hand puts an edge (one standard deviation, mm) on a photo shown at `scale` dots a pixel. */
export const handOf = (view: PhotoView, edge: Edge, scale: number): number =>
  Math.max(LEAST_HAND, (HAND_DOTS * pixelSize(view, edge)) / scale);

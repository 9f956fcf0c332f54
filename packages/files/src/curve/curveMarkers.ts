import type { Vector } from '@panewright/geometry';
import { moved } from './affine.ts';
import type { FileCurve, Stroke } from './drawing.ts';

/** Width and height of the drawing in its own numbers, by the ends of its curves and the corners about its ellipses. */
export function extentOf({ strokes }: { readonly strokes: readonly Stroke[] }): {
  readonly width: number;
  readonly height: number;
} {
  const box = { minX: Infinity, minY: Infinity, maxX: -Infinity, maxY: -Infinity };
  for (const { curves } of strokes)
    for (const curve of curves)
      for (const { x, y } of curveMarkers(curve)) {
        box.minX = Math.min(box.minX, x);
        box.minY = Math.min(box.minY, y);
        box.maxX = Math.max(box.maxX, x);
        box.maxY = Math.max(box.maxY, y);
      }
  return { width: box.maxX - box.minX, height: box.maxY - box.minY };
}

/** Points that a curve reaches or that hold it: ends, control points, places round an ellipse. */
export function curveMarkers(curve: FileCurve): readonly Vector[] {
  if (curve.kind === 'bezier') return curve.points.map(({ x, y, w }) => ({ x: x / w, y: y / w }));
  if (curve.kind !== 'ellipse') return [curve.from, curve.to];
  const { centre, u, v, start, end } = curve;
  const frame = { a: u.x, b: u.y, c: v.x, d: v.y, e: centre.x, f: centre.y };
  return Array.from({ length: 17 }, (_, k) => {
    const angle = start + ((end - start) * k) / 16;
    return moved(frame, { x: Math.cos(angle), y: Math.sin(angle) });
  });
}

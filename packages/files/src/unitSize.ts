import { ok, type Result, refuse } from '@panewright/quantity';
import { moved } from './curve/affine.ts';
import type { Drawing, FileCurve } from './curve/drawing.ts';
import type { FileFormat, FileNote, FileRefusal, FileUnit } from './fileRefusal.ts';

/** @source sources.md#nist-sp811, sources.md#css-values-lengths */
const MILLIMETRES: Readonly<Record<FileUnit, number>> = {
  ...{ mm: 1, cm: 10, dm: 100, m: 1000, in: 25.4, ft: 304.8, yd: 914.4 },
  ...{ px: 25.4 / 96, px90: 25.4 / 90, px72: 25.4 / 72, pt: 25.4 / 72 },
};

export interface UnitSize {
  readonly unit: FileUnit;
  readonly millimetres: number;
  readonly notes: readonly FileNote[];
}

/** A unit told wins over the file's. A page in pixels says how many of them a unit is. */
export function unitSize(
  drawing: Drawing,
  format: FileFormat,
  told: FileUnit | undefined,
): Result<UnitSize, FileRefusal> {
  const { unit: stated, offered } = drawing;
  const unit = told ?? stated;
  if (unit === undefined) return refuse({ code: 'UNIT_NOT_STATED', format, offered, ...extentOf(drawing) });
  const isOwn = told === undefined || told === stated;
  if (isOwn && drawing.millimetres !== undefined)
    return ok({ unit, millimetres: drawing.millimetres, notes: [] });
  const pixels = /^px/.test(unit) ? (drawing.pixels ?? 1) : 1;
  const notes: FileNote[] =
    isOwn || stated === undefined ? [] : [{ code: 'UNIT_OVERRULED', stated, used: unit }];
  return ok({ unit, millimetres: MILLIMETRES[unit] * pixels, notes });
}

/** Width and height of the drawing in its own numbers, by the ends of its curves and the corners about its ellipses. */
function extentOf({ strokes }: Pick<Drawing, 'strokes'>): {
  readonly width: number;
  readonly height: number;
} {
  const box = { minX: Infinity, minY: Infinity, maxX: -Infinity, maxY: -Infinity };
  for (const { curves } of strokes)
    for (const curve of curves)
      for (const { x, y } of markers(curve)) {
        box.minX = Math.min(box.minX, x);
        box.minY = Math.min(box.minY, y);
        box.maxX = Math.max(box.maxX, x);
        box.maxY = Math.max(box.maxY, y);
      }
  return { width: box.maxX - box.minX, height: box.maxY - box.minY };
}

function markers(curve: FileCurve): readonly { readonly x: number; readonly y: number }[] {
  if (curve.kind === 'bezier') return curve.points.map(({ x, y, w }) => ({ x: x / w, y: y / w }));
  if (curve.kind !== 'ellipse') return [curve.from, curve.to];
  const { centre, u, v, start, end } = curve;
  const frame = { a: u.x, b: u.y, c: v.x, d: v.y, e: centre.x, f: centre.y };
  return Array.from({ length: 17 }, (_, k) => {
    const angle = start + ((end - start) * k) / 16;
    return moved(frame, { x: Math.cos(angle), y: Math.sin(angle) });
  });
}

import { ok, type Result, refuse } from '@panewright/quantity';
import { extentOf } from './curve/curveMarkers.ts';
import type { Drawing } from './curve/drawing.ts';
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

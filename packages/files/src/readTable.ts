import { type Outline, outlineFrom, type Point, point, validate } from '@panewright/geometry';
import { type Millimetre, ok, type Result, refuse } from '@panewright/quantity';
import { type ChainFit, fitChain } from '@panewright/survey';
import { readCsv } from './csv/readCsv.ts';
import type { FileCurve } from './curve/drawing.ts';
import type { FilePlace, FileRefusal, FileUnit } from './fileRefusal.ts';
import type { ReadFile, ReadOptions } from './readOutlines.ts';
import { unitSize } from './unitSize.ts';

const LEAST_CORNERS = 3;

/** A table of points as one outline: fitted, or corner to corner. */
export function readTable(text: string, options: ReadOptions): Result<ReadFile, FileRefusal> {
  const table = readCsv(text);
  if (!table.ok) return table;
  const { points, unit: stated } = table.value;
  const strokes = [
    {
      curves: points.slice(1).map((to, i): FileCurve => ({ kind: 'line', from: points[i]!, to })),
      place: { line: 1, entity: 'table' },
    },
  ];
  if (points.length < LEAST_CORNERS)
    return refuse({ code: 'POINTS_TOO_FEW', points: points.length, least: LEAST_CORNERS });
  const offered: readonly FileUnit[] = ['mm', 'in', 'cm', 'm'];
  const size = unitSize({ strokes, unit: stated, offered, notes: [] }, 'csv', options.unit);
  if (!size.ok) return size;
  const { unit, millimetres, notes } = size.value;
  const scaled = points.map(({ x, y }) => point(x * millimetres, y * millimetres));
  const [first, last] = [scaled[0]!, scaled.at(-1)!];
  const ring = Math.hypot(first.x - last.x, first.y - last.y) < 1e-3 ? scaled.slice(0, -1) : scaled;
  const place: FilePlace = { line: 1, entity: 'table' };
  const outline = options.points === 'corners' ? cornered(ring, place) : traced(ring, options.pointSigma);
  if (!outline.ok) return outline;
  return ok({ format: 'csv', outlines: [{ ...outline.value, place, inner: [] }], unit, layers: [], notes });
}

type Made = Result<{ readonly outline: Outline; readonly fit?: ChainFit }, FileRefusal>;

function traced(ring: readonly Point[], sigma: Millimetre | undefined): Made {
  const fit = fitChain(sigma === undefined ? ring : ring.map((p) => ({ ...p, sigma })));
  return fit.ok ? ok({ outline: fit.value.outline, fit: fit.value }) : fit;
}

function cornered(ring: readonly Point[], place: FilePlace): Made {
  const polygon = outlineFrom(ring);
  if (!polygon.ok) {
    const { refusal } = polygon;
    if (refusal.code === 'TOO_FEW_CORNERS')
      return refuse({ code: 'POINTS_TOO_FEW', points: refusal.corners, least: refusal.least });
    const corner = refusal.corner;
    return refuse({
      code: 'NUMBER_OUT_OF_RANGE',
      place: { ...place, line: corner + 1 },
      what: 'corner on the next',
      value: 0,
    });
  }
  const valid = validate(polygon.value);
  if (valid.ok) return ok({ outline: valid.value });
  if (valid.refusal.code === 'OUTLINE_CROSSES_ITSELF')
    return refuse({ code: 'FILE_OUTLINE_CROSSES_ITSELF', at: valid.refusal.at, places: [place, place] });
  return refuse({ code: 'NO_OUTLINE', layers: [] });
}

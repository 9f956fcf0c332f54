import type { Outline } from '@panewright/geometry';
import { type Millimetre, ok, type Result, refuse } from '@panewright/quantity';
import type { ChainFit } from '@panewright/survey';
import type { InnerOutline } from './chain/nestOutlines.ts';
import { layersOf, outlinesFrom } from './chain/outlinesFrom.ts';
import { mapStroke, scaling } from './curve/affine.ts';
import type { Drawing } from './curve/drawing.ts';
import { readDxf } from './dxf/readDxf.ts';
import { fileFormat, fileText } from './fileFormat.ts';
import type { FileFormat, FileNote, FilePlace, FileRefusal, FileUnit } from './fileRefusal.ts';
import { readTable } from './readTable.ts';
import { readSvg } from './svg/readSvg.ts';
import { unitSize } from './unitSize.ts';

export interface ReadOptions {
  /** By the file's first bytes unless told. */
  readonly format?: FileFormat;
  /** What one unit of the file is. Needed where the file does not say; where it does, this one counts and a note says so. */
  readonly unit?: FileUnit;
  /** Ends at most this far apart are brought together, mm. Nearer than 0.002 mm they are one in any case: files round. */
  readonly closeWithin: Millimetre;
  /** Splines, ellipses and the like are drawn as tangent arcs no farther off than this, mm. */
  readonly arcTolerance: Millimetre;
  /** Only what is drawn on these layers; all of them unless told. */
  readonly layers?: readonly string[];
  /**
   * How points of a table are meant: `trace` (the default) has many points, with the hand's scatter, to which lines and
   * arcs are fitted; `corners` has the corners of straight sides, taken as they are.
   */
  readonly points?: 'trace' | 'corners';
  /** Standard deviation of each traced point across the line, mm; measured from their scatter unless told. */
  readonly pointSigma?: Millimetre;
}

export interface ReadOutline {
  readonly outline: Outline;
  readonly name?: string;
  readonly layer?: string;
  /** Where in the file it begins. */
  readonly place: FilePlace;
  /** What is drawn within it: holes, sew lines, a second frame. */
  readonly inner: readonly InnerOutline[];
  /** For traced points: the fit, with its covariance. */
  readonly fit?: ChainFit;
}

export interface ReadFile {
  readonly format: FileFormat;
  /** In the order of the file, mm, anticlockwise, y up; placed as in the file. */
  readonly outlines: readonly ReadOutline[];
  readonly unit: FileUnit;
  /** All layers that hold lines, to choose from. */
  readonly layers: readonly string[];
  readonly notes: readonly FileNote[];
}

const MOST_BYTES = 16_000_000;

/**
 * The outlines a drawing or a table of points holds: DXF (ASCII, R12 to current), SVG, CSV. Lines and arcs are kept as
 * they are; other curves become tangent arcs within `arcTolerance`. Nothing is mended without a note.
 *
 * @param file its bytes, or its text where something else has decoded it
 * @returns outlines in mm; those within another are its `inner`
 * @accuracy lines and arcs to rounding; fitted curves within `arcTolerance`; ends moved by `closeWithin` / 2 at most
 * @refuses any FileRefusal; each names its place in the file
 * @source sources.md#dxf-reference, sources.md#svg2-paths, sources.md#rfc-4180
 */
export function readOutlines(file: Uint8Array | string, options: ReadOptions): Result<ReadFile, FileRefusal> {
  const { closeWithin, arcTolerance, pointSigma } = options;
  for (const [option, value, least] of [
    ['closeWithin', closeWithin, 0],
    ['arcTolerance', arcTolerance, 1e-4],
    ['pointSigma', pointSigma ?? 1, 1e-6],
  ] as const)
    if (!(value >= least && value <= 100)) return refuse({ code: 'OPTION_OUT_OF_RANGE', option, value });
  if (file.length === 0) return refuse({ code: 'FILE_EMPTY' });
  if (file.length > MOST_BYTES)
    return refuse({ code: 'FILE_TOO_LARGE', what: 'bytes', found: file.length, most: MOST_BYTES });
  const opened = openFile(file, options.format);
  if (!opened.ok) return opened;
  const { format, text } = opened.value;
  if (text.trim() === '') return refuse({ code: 'FILE_EMPTY' });
  if (format === 'csv') return readTable(text, options);
  const drawing = format === 'dxf' ? readDxf(text, typeof file === 'string') : readSvg(text);
  return drawing.ok ? drawnOutlines(drawing.value, format, options) : drawing;
}

function openFile(
  file: Uint8Array | string,
  told: FileFormat | undefined,
): Result<{ readonly format: FileFormat; readonly text: string }, FileRefusal> {
  const start = typeof file === 'string' ? file.slice(0, 4096) : file.subarray(0, 4096);
  const head = typeof start === 'string' ? start : headText(start);
  const found = fileFormat(head);
  if (
    !found.ok &&
    (told === undefined || found.refusal.code !== 'FILE_FORMAT_NOT_READ' || !isUnknown(found.refusal))
  )
    return found;
  const format = told ?? (found.ok ? found.value : 'csv');
  const text = typeof file === 'string' ? ok(file.replace(/^\ufeff/, '')) : fileText(file, format);
  return text.ok ? ok({ format, text: text.value }) : text;
}

const isUnknown = (refusal: FileRefusal) =>
  refusal.code === 'FILE_FORMAT_NOT_READ' && refusal.format === 'unknown';

/** The first bytes as letters, good enough to tell a format by. */
function headText(start: Uint8Array): string {
  const read = fileText(
    start[0] === 0xff || start[0] === 0xfe ? start.subarray(0, start.length & ~1) : start,
    'csv',
  );
  return read.ok ? read.value : '';
}

function drawnOutlines(
  drawing: Drawing,
  format: FileFormat,
  options: ReadOptions,
): Result<ReadFile, FileRefusal> {
  const { layers: wanted } = options;
  const layers = layersOf(drawing.strokes);
  const strokes = wanted
    ? drawing.strokes.filter(({ layer }) => layer !== undefined && wanted.includes(layer))
    : drawing.strokes;
  if (strokes.length === 0) return refuse({ code: 'NO_OUTLINE', layers });
  const size = unitSize(drawing, format, options.unit);
  if (!size.ok) return size;
  const { unit, millimetres } = size.value;
  const scale = scaling(millimetres, millimetres);
  const found = outlinesFrom(
    strokes.map((stroke) => mapStroke(scale, stroke)),
    options,
  );
  if (!found.ok) return found;
  const { outlines, notes } = found.value;
  return ok({ format, outlines, unit, layers, notes: [...drawing.notes, ...size.value.notes, ...notes] });
}

import type { LayDrawing, PieceDrawing, Sheet } from '@panewright/drawing';
import { csv } from './csv.ts';
import { type DxfVersion, layDxf, pieceDxf } from './dxf/cutDxf.ts';
import type { CentreMarks } from './dxf/entities.ts';
import type { Fonts } from './fonts.ts';
import { layHpgl, pieceHpgl } from './hpgl/cutHpgl.ts';
import type { PlotOptions } from './hpgl/plotOptions.ts';
import { type PdfOptions, sheetPdf } from './pdf/sheetPdf.ts';
import { laySvg, pieceSvg } from './svg/cutSvg.ts';
import { ascii, utf8 } from './utf8.ts';

export interface RenderedFile {
  /** Below the folder the files go to, e.g. `patterns/P1-letter.pdf`. */
  readonly path: string;
  readonly mime: string;
  readonly bytes: Uint8Array;
}

export interface RenderOptions {
  readonly fonts: Fonts;
  /** ISO day, `2026-11-25`. */
  readonly date: string;
  /** Tells this run's files from others'; any text. Each file's own id is made from it and the file's path. */
  readonly id: string;
  readonly author: string;
  readonly language?: string;
  /** R12 where not given. With several, the first has the plain name. */
  readonly dxf?: readonly DxfVersion[];
  /** Crosses that are drawn, where not given. */
  readonly centres?: CentreMarks;
  /** Files for a plotter besides, where given. */
  readonly hpgl?: PlotOptions;
}

/** What is rendered: the sheets, and the pieces and lays for machines. */
export interface Drawings {
  readonly sheets: readonly Sheet[];
  readonly pieces: readonly PieceDrawing[];
  readonly lays: readonly LayDrawing[];
}

/**
 * Every file of a job: a PDF a sheet, a CSV where it has a table, an SVG and a DXF a piece and a lay. The same input gives
 * the same names and the same bytes.
 */
export async function renderFiles(
  drawings: Drawings,
  options: RenderOptions,
): Promise<readonly RenderedFile[]> {
  const files: RenderedFile[] = [];
  for (const sheet of drawings.sheets) files.push(...(await sheetFiles(sheet, options)));
  for (const piece of drawings.pieces) files.push(...pieceFiles(piece, options));
  for (const lay of drawings.lays) files.push(...layFiles(lay, drawings.lays.length, options));
  return files;
}

/** Tells spreadsheets that the letters are UTF-8. */
const BYTE_ORDER_MARK = '\ufeff';

/** A sheet as PDF, and as CSV where it has a table. */
export async function sheetFiles(sheet: Sheet, options: RenderOptions): Promise<readonly RenderedFile[]> {
  const path = `${sheet.path}.pdf`;
  const { fonts, date, author } = options;
  const language = sheet.language ?? options.language ?? 'en';
  const pdf: PdfOptions = { fonts, date, author, language, id: textId(`${options.id}\n${path}`) };
  const files: RenderedFile[] = [{ path, mime: 'application/pdf', bytes: await sheetPdf(sheet, pdf) }];
  if (sheet.table !== undefined)
    files.push({
      path: `${sheet.path}.csv`,
      mime: 'text/csv; charset=utf-8',
      bytes: utf8(`${BYTE_ORDER_MARK}${csv(sheet.table)}`),
    });
  return files;
}

export function pieceFiles(piece: PieceDrawing, options: RenderOptions): readonly RenderedFile[] {
  const stem = `pieces/${fileName(piece.name)}`;
  return [
    { path: `${stem}.svg`, mime: 'image/svg+xml', bytes: utf8(pieceSvg(piece)) },
    ...dxfFiles(stem, options, (version) =>
      pieceDxf(piece, { version, centres: options.centres ?? 'cross' }),
    ),
    ...plotFiles(stem, options, (plot) => pieceHpgl(piece, plot)),
  ];
}

export function layFiles(lay: LayDrawing, count: number, options: RenderOptions): readonly RenderedFile[] {
  const stem = count === 1 ? 'lay' : `lay-${fileName(lay.name)}`;
  return [
    { path: `${stem}.svg`, mime: 'image/svg+xml', bytes: utf8(laySvg(lay)) },
    ...dxfFiles(stem, options, (version) => layDxf(lay, { version, centres: options.centres ?? 'cross' })),
    ...plotFiles(stem, options, (plot) => layHpgl(lay, plot)),
  ];
}

function plotFiles(
  stem: string,
  { hpgl }: RenderOptions,
  write: (options: PlotOptions) => string,
): readonly RenderedFile[] {
  if (hpgl === undefined) return [];
  return [{ path: `${stem}.plt`, mime: 'application/vnd.hp-hpgl', bytes: ascii(write(hpgl)) }];
}

function dxfFiles(
  stem: string,
  { dxf = ['R12'] }: RenderOptions,
  write: (version: DxfVersion) => string,
): readonly RenderedFile[] {
  return dxf.map((version, index) => ({
    path: index === 0 ? `${stem}.dxf` : `${stem}-${version}.dxf`,
    mime: 'image/vnd.dxf',
    bytes: ascii(write(version)),
  }));
}

/** A name that every file system takes. */
const fileName = (name: string): string => name.replace(/[^A-Za-z0-9._-]/g, '_');

/**
 * 32 hexadecimal digits from a text, to tell files apart.
 *
 * @source sources.md#fnv-1a, four times with different beginnings
 */
export function textId(text: string): string {
  const bytes = utf8(text);
  return [0x811c9dc5, 0x01000193, 0x9e3779b9, 0x85ebca6b]
    .map((start) => {
      let hash = start;
      for (const byte of bytes) hash = Math.imul(hash ^ byte, 0x01000193);
      return (hash >>> 0).toString(16).padStart(8, '0');
    })
    .join('');
}

import { ok, type Result, refuse } from '@panewright/quantity';
import type { FileFormat, FileRefusal } from './fileRefusal.ts';
import { decodeByPage, lettersOf } from './text/codePages.ts';
import { bytesAsLetters, decodeUtf8, decodeUtf16 } from './text/decodeText.ts';

/** What a file begins with that is not read, and what it is. */
const FOREIGN: readonly (readonly [string, string])[] = [
  ['AutoCAD Binary DXF', 'binary DXF'],
  ['AC10', 'DWG'],
  ['%PDF', 'PDF'],
  ['%!PS', 'PostScript'],
  ['PK\u0003\u0004', 'zip'],
  ['\u001f\u008b', 'gzip'],
  ['\u0089PNG', 'PNG'],
  ['\u00ff\u00d8\u00ff', 'JPEG'],
  ['GIF8', 'GIF'],
  ['RIFF', 'WebP'],
];

/** The format by what the file begins with. @refuses FILE_FORMAT_NOT_READ */
export function fileFormat(head: string): Result<FileFormat, FileRefusal> {
  const foreign = FOREIGN.find(([start]) => head.startsWith(start));
  if (foreign) return refuse({ code: 'FILE_FORMAT_NOT_READ', format: foreign[1] });
  const text = head.replace(/^\ufeff|^\u00ef\u00bb\u00bf/, '');
  if (/^\s*(?:<\?xml|<!--|<!DOCTYPE\s+svg|<(?:svg:)?svg[\s>])/.test(text)) return ok('svg');
  if (/^\s*(?:999\r?\n[^\r\n]*\r?\n\s*)*0\r?\n\s*SECTION\b/.test(text) || /^\s*999\r?\n/.test(text))
    return ok('dxf');
  const lines = text.split(/\r\n|\n|\r/).filter((line) => line.trim() !== '' && !line.startsWith('#'));
  const isTable = lines
    .slice(0, 3)
    .every((line) => /[,;\t ]/.test(line.trim()) && /^[\p{L}\d\s,;.:+\-"'()[\]/_%°]+$/u.test(line));
  return lines.length > 0 && isTable
    ? ok('csv')
    : refuse({ code: 'FILE_FORMAT_NOT_READ', format: 'unknown' });
}

/**
 * A file's bytes as text. DXF names its encoding within, so its bytes are given as letters one to one.
 *
 * @refuses FILE_TEXT_DAMAGED
 */
export function fileText(bytes: Uint8Array, format: FileFormat): Result<string, FileRefusal> {
  if (format === 'dxf') return ok(bytesAsLetters(bytes).replace(/^\u00ef\u00bb\u00bf/, ''));
  const wide = decodeUtf16(bytes);
  if (wide !== undefined) return ok(wide);
  const named = /^<\?xml[^>]*\bencoding\s*=\s*["']([\w.-]+)["']/.exec(
    bytesAsLetters(bytes.subarray(0, 200)),
  )?.[1];
  const letters = named && !/^utf-?8$/i.test(named) ? lettersOf(named) : undefined;
  if (letters) return ok(decodeByPage(bytesAsLetters(bytes), letters));
  const text = decodeUtf8(bytes);
  if (text.ok) return ok(text.value.replace(/^\ufeff/, ''));
  // A table's words may be in any code page; its numbers are the same in all.
  return format === 'csv' ? ok(decodeByPage(bytesAsLetters(bytes), lettersOf('1252')!)) : text;
}

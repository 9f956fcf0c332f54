import { ok, type Result, refuse } from '@panewright/quantity';
import type { FileRefusal, FileUnit } from '../fileRefusal.ts';

export interface PointTable {
  readonly points: readonly { readonly x: number; readonly y: number }[];
  readonly unit: FileUnit | undefined;
}

const MOST_POINTS = 20_000;
const MOST_NUMBER = 1e9;
const PLAIN = /^[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?$/;
const COMMA = /^[+-]?(?:\d+,?\d*|,\d+)(?:[eE][+-]?\d+)?$/;

const UNITS: readonly (readonly [RegExp, FileUnit])[] = [
  [/(?:^|[^a-z])(?:mm|millimet(?:re|er)s?)(?![a-z])/, 'mm'],
  [/(?:^|[^a-z])(?:cm|centimet(?:re|er)s?)(?![a-z])/, 'cm'],
  [/(?:^|[^a-z])(?:m|met(?:re|er)s?)(?![a-z])/, 'm'],
  [/(?:^|[^a-z])(?:in|inch(?:es)?)(?![a-z])|"/, 'in'],
  [/(?:^|[^a-z])(?:ft|feet|foot)(?![a-z])/, 'ft'],
];

interface Row {
  readonly cells: readonly string[];
  readonly line: number;
}

/**
 * Points in order round an opening, a row each: x and y apart by comma, semicolon, tab or blanks, with decimal points or,
 * unless commas part the columns, decimal commas. A first row of words names the columns and may state the unit; so may a
 * comment (`# unit: mm`). Of more than two columns the first row must name x and y.
 *
 * @refuses NUMBER_UNREADABLE with line and column, COLUMNS_UNCLEAR, COMMAS_UNCLEAR, FILE_TOO_LARGE
 * @source sources.md#rfc-4180
 */
export function readCsv(text: string): Result<PointTable, FileRefusal> {
  const lines = text.split(/\r\n|\n|\r/).map((letters, i) => ({ letters: letters.trim(), line: i + 1 }));
  const comments = lines.filter(({ letters }) => letters.startsWith('#'));
  const filled = lines.filter(({ letters }) => letters !== '' && !letters.startsWith('#'));
  if (filled.length > MOST_POINTS + 1)
    return refuse({ code: 'FILE_TOO_LARGE', what: 'points', found: filled.length, most: MOST_POINTS });
  if (filled.length === 0) return refuse({ code: 'FILE_EMPTY' });
  const rows = rowsOf(filled);
  if (!rows.ok) return rows;
  const [first, ...rest] = rows.value.rows;
  const { isNumber } = rows.value;
  const isHead = first!.cells.every((cell) => /^[\p{L}"(]/u.test(cell) && !/^(?:nan|inf)/i.test(cell));
  const columns = columnsOf(first!, isHead);
  if (!columns.ok) return columns;
  const points: { readonly x: number; readonly y: number }[] = [];
  for (const row of isHead ? rest : rows.value.rows) {
    const point = pointOf(row, columns.value, isNumber);
    if (!point.ok) return point;
    points.push(point.value);
  }
  const said = comments.flatMap(({ letters }) => /\bunits?\s*[:=](.*)/i.exec(letters)?.[1] ?? []);
  const named = isHead ? [columns.value.x, columns.value.y].map((column) => first!.cells[column]!) : [];
  const [x, y] = named.map(unitIn);
  if (x !== y) return refuse({ code: 'UNIT_NOT_READ', stated: named.join(', ').slice(0, 40) });
  return ok({ points, unit: said.map(unitIn)[0] ?? x });
}

type IsNumber = (cell: string) => boolean;

function rowsOf(
  lines: readonly { readonly letters: string; readonly line: number }[],
): Result<{ readonly rows: readonly Row[]; readonly isNumber: IsNumber }, FileRefusal> {
  const isMost = (holds: (letters: string) => boolean) =>
    lines.filter(({ letters }) => holds(letters)).length > lines.length / 2;
  const isBlankParted = isMost((letters) => /^[+-]?\d+,\d+(?:\s+[+-]?\d+,\d+)+$/.test(letters));
  const mark = [';', '\t', ','].find(
    (sign) => isMost((letters) => letters.includes(sign)) && !(sign === ',' && isBlankParted),
  );
  const rows = lines.map(({ letters, line }): Row => ({ cells: cellsOf(letters, mark), line }));
  if (mark === ',') {
    // 1,5,2,5 may be two numbers or four.
    const four = /^[+-]?\d+\s*,\s*\d+\s*,\s*[+-]?\d+\s*,\s*\d+$/;
    const doubtful = lines.find(({ letters }) => four.test(letters));
    if (doubtful && lines.slice(1).every(({ letters }) => four.test(letters)))
      return refuse({ code: 'COMMAS_UNCLEAR', line: doubtful.line });
    return ok({ rows, isNumber: (cell) => PLAIN.test(cell) });
  }
  const cells = rows.flatMap((row) => row.cells);
  const hasComma = cells.some((cell) => COMMA.test(cell) && cell.includes(','));
  const hasPoint = cells.some((cell) => PLAIN.test(cell) && cell.includes('.'));
  if (hasComma && hasPoint) {
    const row = rows.find(({ cells: own }) => own.some((cell) => COMMA.test(cell) && cell.includes(',')));
    return refuse({ code: 'COMMAS_UNCLEAR', line: row!.line });
  }
  return ok({ rows, isNumber: (cell) => (hasComma ? COMMA : PLAIN).test(cell) });
}

function cellsOf(letters: string, mark: string | undefined): readonly string[] {
  const cells = mark === undefined ? letters.split(/\s+/) : letters.split(mark);
  const bare = cells.map((cell) =>
    cell
      .trim()
      .replace(/^"(.*)"$/, '$1')
      .trim(),
  );
  // A mark at the end of the line leaves an empty last cell.
  return bare.at(-1) === '' ? bare.slice(0, -1) : bare;
}

interface Columns {
  readonly x: number;
  readonly y: number;
}

function columnsOf({ cells, line }: Row, isHead: boolean): Result<Columns, FileRefusal> {
  const named = (letter: string) =>
    cells.findIndex((cell) => new RegExp(`^${letter}(?![a-z])`, 'i').test(cell.trim()));
  const [x, y] = isHead ? [named('x'), named('y')] : [-1, -1];
  if (x >= 0 && y >= 0) return ok({ x, y });
  if (cells.length === 2) return ok({ x: 0, y: 1 });
  return refuse({ code: 'COLUMNS_UNCLEAR', line, columns: cells.length });
}

function pointOf(
  { cells, line }: Row,
  columns: Columns,
  isNumber: IsNumber,
): Result<{ readonly x: number; readonly y: number }, FileRefusal> {
  const values: number[] = [];
  for (const [what, column] of Object.entries(columns) as [string, number][]) {
    const text = cells[column];
    const place = { line, entity: 'row' };
    if (text === undefined || text === '') return refuse({ code: 'VALUE_MISSING', place, what });
    if (!isNumber(text)) return refuse({ code: 'NUMBER_UNREADABLE', place, what, text: text.slice(0, 40) });
    const value = Number(text.replace(',', '.'));
    if (!(Math.abs(value) <= MOST_NUMBER)) return refuse({ code: 'NUMBER_OUT_OF_RANGE', place, what, value });
    values.push(value);
  }
  return ok({ x: values[0]!, y: values[1]! });
}

const unitIn = (words: string): FileUnit | undefined =>
  UNITS.find(([pattern]) => pattern.test(words.toLowerCase()))?.[1];

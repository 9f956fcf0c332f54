import { ok, type Result, refuse } from '@panewright/quantity';
import { type Affine, chained, IDENTITY, mapCurve, scaling, shifting, turning } from '../curve/affine.ts';
import type { Drawing, Stroke } from '../curve/drawing.ts';
import type { FileNote, FilePlace, FileRefusal } from '../fileRefusal.ts';
import { decodeName } from '../text/codePages.ts';
import { DxfNumbers, type DxfRecord, type DxfSections, dxfSections, textOf } from './dxfTags.ts';
import { type DxfItem, dxfItems, type Insert, type LeftOut } from './dxfTree.ts';
import { dxfUnit } from './dxfUnit.ts';

/** A block's items are read when it is first put in: one that never is may hold what it likes. */
interface Block {
  readonly base: { readonly x: number; readonly y: number };
  readonly records: readonly DxfRecord[];
  items: readonly DxfItem[] | undefined;
}

const MOST_NESTING = 16;
const MOST_ENTITIES = 50_000;

/**
 * An ASCII DXF drawing, R12 to current: LINE, ARC, CIRCLE, LWPOLYLINE, POLYLINE, SPLINE, ELLIPSE, and blocks put in by
 * INSERT, scaled, turned, mirrored and in rows and columns.
 *
 * @param text bytes as letters one to one (names are decoded here), or text as it is if `isDecoded`
 * @source sources.md#dxf-reference
 */
export function readDxf(text: string, isDecoded: boolean): Result<Drawing, FileRefusal> {
  const read = dxfSections(text);
  if (!read.ok) return read;
  const header = headerOf(read.value);
  const unit = dxfUnit(header, read.value.comments);
  if (!unit.ok) return unit;
  const page = codePageOf(header, isDecoded);
  const names = decodeName(page.encoding);
  const leftOut: LeftOut = { kinds: new Map(), hidden: new Map(), paperSpace: 0 };
  const hidden = hiddenLayers(read.value);
  const isShown = (layer: string) => !hidden.has(layer.toUpperCase());
  const records = (name: string) =>
    read.value.sections.filter((section) => section.name === name).flatMap((s) => s.records);
  const blocks = blocksOf(records('BLOCKS'));
  if (!blocks.ok) return blocks;
  const itemsOf = (of: readonly DxfRecord[]) => dxfItems(of, isShown, leftOut);
  const items = itemsOf(records('ENTITIES'));
  if (!items.ok) return items;
  const strokes: Stroke[] = [];
  const placing = { blocks: blocks.value, itemsOf, strokes, names, within: [], visits: { count: 0 } };
  const bad = place(items.value, IDENTITY, placing);
  if (bad) return refuse(bad);
  return ok({ strokes, ...unit.value, notes: [...page.notes, ...notesOf(leftOut, names)] });
}

function headerOf({ sections }: DxfSections): ReadonlyMap<string, string> {
  const header = new Map<string, string>();
  let name = '';
  for (const { code, text } of sections.find((section) => section.name === 'HEADER')?.head ?? []) {
    if (code === 9) name = text.toUpperCase();
    else if (!header.has(name)) header.set(name, text);
  }
  return header;
}

/** From release 2007 (AC1021) text is UTF-8; before, it is of the code page named. */
function codePageOf(
  header: ReadonlyMap<string, string>,
  isDecoded: boolean,
): { readonly encoding: string; readonly notes: readonly FileNote[] } {
  if (isDecoded) return { encoding: 'decoded', notes: [] };
  const version = header.get('$ACADVER')?.toUpperCase();
  if (version !== undefined && version >= 'AC1021') return { encoding: 'utf-8', notes: [] };
  const encoding = (header.get('$DWGCODEPAGE') ?? 'ansi_1252').toLowerCase().replace(/^ansi_|^dos/, '');
  return decodeName(encoding)('é') === undefined
    ? { encoding: '1252', notes: [{ code: 'ENCODING_NOT_KNOWN', encoding }] }
    : { encoding, notes: [] };
}

/** Layers that are off or frozen. */
function hiddenLayers({ sections }: DxfSections): ReadonlySet<string> {
  const layers = sections.filter(({ name }) => name === 'TABLES').flatMap(({ records }) => records);
  return new Set(
    layers.flatMap((record) => {
      if (record.kind !== 'LAYER') return [];
      const isHidden = Number(textOf(record, 62) ?? 7) < 0 || (Number(textOf(record, 70) ?? 0) & 1) === 1;
      return isHidden ? [(textOf(record, 2) ?? '').toUpperCase()] : [];
    }),
  );
}

function blocksOf(records: readonly DxfRecord[]): Result<ReadonlyMap<string, Block>, FileRefusal> {
  const blocks = new Map<string, Block>();
  let i = 0;
  while (i < records.length) {
    const head = records[i]!;
    if (head.kind !== 'BLOCK')
      return refuse({ code: 'FILE_UNREADABLE_AT', line: head.line, wanted: 'BLOCK', found: head.kind });
    const start = ++i;
    while (i < records.length && records[i]!.kind !== 'ENDBLK' && records[i]!.kind !== 'BLOCK') i++;
    if (records[i]?.kind !== 'ENDBLK')
      return refuse({ code: 'FILE_CUT_SHORT', line: head.line, wanted: 'ENDBLK' });
    const numbers = DxfNumbers.of(head, []);
    if (!numbers.ok) return numbers;
    const base = { x: numbers.value.get(10), y: numbers.value.get(20) };
    blocks.set((textOf(head, 2) ?? '').toUpperCase(), {
      base,
      records: records.slice(start, i),
      items: undefined,
    });
    i++;
  }
  return ok(blocks);
}

interface Placing {
  readonly blocks: ReadonlyMap<string, Block>;
  readonly itemsOf: (records: readonly DxfRecord[]) => Result<readonly DxfItem[], FileRefusal>;
  readonly strokes: Stroke[];
  readonly names: (bytes: string) => string | undefined;
  /** Blocks we are in, outermost first. */
  readonly within: readonly { readonly block: string; readonly layer: string }[];
  readonly visits: { count: number };
}

/** Adds the items' strokes under a map; a refusal, if any. Layer 0 within a block is the layer the block is put on. */
function place(items: readonly DxfItem[], map: Affine, placing: Placing): FileRefusal | undefined {
  const { strokes, names, within, visits } = placing;
  const outer = within.at(-1);
  for (const item of items) {
    if (++visits.count > MOST_ENTITIES)
      return { code: 'FILE_TOO_LARGE', what: 'entities', found: visits.count, most: MOST_ENTITIES };
    const layer = item.layer === '0' && outer ? outer.layer : item.layer;
    if (item.kind === 'insert') {
      const bad = placeBlock(item.insert, layer, item.place, map, placing);
      if (bad) return bad;
    } else if (item.curves.length > 0) {
      const name = within[0] && (names(within[0].block) ?? within[0].block);
      const curves = item.curves.map((curve) => mapCurve(map, curve));
      const named = { layer: names(layer) ?? layer, ...(name === undefined ? {} : { name }) };
      strokes.push({ curves, ...named, place: item.place });
    }
  }
  return undefined;
}

function placeBlock(
  insert: Insert,
  layer: string,
  at: FilePlace,
  map: Affine,
  placing: Placing,
): FileRefusal | undefined {
  const name = insert.block;
  const block = placing.blocks.get(name.toUpperCase());
  if (block === undefined) return { code: 'REFERENCE_MISSING', place: at, name };
  const { within } = placing;
  if (within.some((outer) => outer.block.toUpperCase() === name.toUpperCase()))
    return { code: 'REFERENCE_CIRCULAR', place: at, name };
  if (within.length >= MOST_NESTING)
    return { code: 'FILE_TOO_LARGE', what: 'nesting', found: within.length + 1, most: MOST_NESTING };
  if (block.items === undefined) {
    const items = placing.itemsOf(block.records);
    if (!items.ok) return items.refusal;
    block.items = items.value;
  }
  const inner = { ...placing, within: [...within, { block: name, layer }] };
  for (const own of copies(insert)) {
    const whole = chained(map, own, shifting(-block.base.x, -block.base.y));
    const bad = place(block.items, whole, inner);
    if (bad) return bad;
  }
  return undefined;
}

/** One map a copy: scaled, moved to its row and column, turned, put in place, seen from its side. */
function copies({ at, scale, turn, columns, rows, spacing, facing }: Insert): readonly Affine[] {
  const angle = (turn % 360) * (Math.PI / 180);
  return Array.from({ length: Math.floor(columns) * Math.floor(rows) }, (_, k) => {
    const [column, row] = [k % Math.floor(columns), Math.floor(k / Math.floor(columns))];
    return chained(
      scaling(facing, 1),
      shifting(at.x, at.y),
      turning(angle),
      shifting(column * spacing.x, row * spacing.y),
      scaling(scale.x, scale.y),
    );
  });
}

function notesOf(
  { kinds, hidden, paperSpace }: LeftOut,
  names: (bytes: string) => string | undefined,
): readonly FileNote[] {
  return [
    ...[...kinds].map(([kind, count]): FileNote => ({ code: 'KIND_LEFT_OUT', kind, count })),
    ...[...hidden].map(
      ([layer, count]): FileNote => ({ code: 'HIDDEN_LEFT_OUT', count, layer: names(layer) ?? layer }),
    ),
    ...(paperSpace > 0 ? [{ code: 'PAPER_SPACE_LEFT_OUT', count: paperSpace } as const] : []),
  ];
}

import type { Vector } from '@panewright/geometry';
import { ok, type Result, refuse } from '@panewright/quantity';
import type { FileCurve } from '../curve/drawing.ts';
import type { FilePlace, FileRefusal } from '../fileRefusal.ts';
import { DxfNumbers, type DxfRecord, textOf } from './dxfTags.ts';
import { drawsOutline, entityCurves, facing, type Vertex, vertexCurves } from './entityCurves.ts';

/** What stands in a drawing or a block: curves, or a block put in its place. */
export type DxfItem =
  | {
      readonly kind: 'curves';
      readonly curves: readonly FileCurve[];
      readonly layer: string;
      readonly place: FilePlace;
    }
  | { readonly kind: 'insert'; readonly insert: Insert; readonly layer: string; readonly place: FilePlace };

export interface Insert {
  readonly block: string;
  readonly at: Vector;
  readonly scale: Vector;
  /** Degrees. */
  readonly turn: number;
  readonly columns: number;
  readonly rows: number;
  readonly spacing: Vector;
  readonly facing: 1 | -1;
}

/** Left out and why, counted. */
export interface LeftOut {
  readonly kinds: Map<string, number>;
  readonly hidden: Map<string, number>;
  paperSpace: number;
}

const count = (counts: Map<string, number>, key: string) => counts.set(key, (counts.get(key) ?? 0) + 1);

/**
 * The items of a run of entity records. Kinds that draw no outline, hidden entities and those of the paper are left out
 * and counted.
 *
 * @param isShown tells of a layer whether it is on
 */
export function dxfItems(
  records: readonly DxfRecord[],
  isShown: (layer: string) => boolean,
  leftOut: LeftOut,
): Result<readonly DxfItem[], FileRefusal> {
  const items: DxfItem[] = [];
  for (let i = 0; i < records.length; i++) {
    const record = records[i]!;
    const group = groupOf(records, i);
    if (!group.ok) return group;
    i += group.value.length;
    if (record.kind === 'SEQEND') continue;
    const layer = textOf(record, 8) ?? '0';
    if (textOf(record, 67) === '1') leftOut.paperSpace++;
    else if (!isShown(layer) || textOf(record, 60) === '1') count(leftOut.hidden, layer);
    else {
      const item = itemOf(record, group.value, layer);
      if (!item.ok) return item;
      if (item.value) items.push(item.value);
      else count(leftOut.kinds, record.kind);
    }
  }
  return ok(items);
}

/** The vertices or attributes that follow a record, up to its SEQEND. */
function groupOf(records: readonly DxfRecord[], index: number): Result<readonly DxfRecord[], FileRefusal> {
  const { kind } = records[index]!;
  const part = kind === 'POLYLINE' ? 'VERTEX' : kind === 'INSERT' ? 'ATTRIB' : undefined;
  if (part === undefined || (part === 'ATTRIB' && records[index + 1]?.kind !== part)) return ok([]);
  const parts: DxfRecord[] = [];
  for (let i = index + 1; i < records.length; i++) {
    const record = records[i]!;
    if (record.kind === 'SEQEND') return ok(parts);
    if (record.kind !== part)
      return refuse({
        code: 'FILE_UNREADABLE_AT',
        line: record.line,
        wanted: `${part} or SEQEND`,
        found: record.kind,
      });
    parts.push(record);
  }
  return refuse({ code: 'FILE_CUT_SHORT', line: records.at(-1)!.line, wanted: 'SEQEND' });
}

function itemOf(
  record: DxfRecord,
  parts: readonly DxfRecord[],
  layer: string,
): Result<DxfItem | undefined, FileRefusal> {
  if (record.kind === 'INSERT') return insertOf(record, layer);
  if (record.kind !== 'POLYLINE' && !drawsOutline(record.kind)) return ok(undefined);
  const curves = record.kind === 'POLYLINE' ? polylineCurves(record, parts) : entityCurves(record);
  if (!curves.ok) return curves;
  const handle = textOf(record, 5);
  const place = { line: record.line, entity: record.kind, ...(handle === undefined ? {} : { id: handle }) };
  return ok(curves.value && { kind: 'curves', curves: curves.value, layer, place });
}

const CLOSED = 1;
const THREE_D = 8;
/** Surfaces: a mesh or a set of faces. */
const SURFACE = 16 | 64;
/** A vertex that only frames a fitted spline. */
const FRAME = 16;

/** @returns undefined for a surface, which draws no outline */
function polylineCurves(
  record: DxfRecord,
  parts: readonly DxfRecord[],
): Result<readonly FileCurve[] | undefined, FileRefusal> {
  const head = DxfNumbers.of(record, []);
  if (!head.ok) return head;
  const flags = head.value.get(70);
  if ((flags & SURFACE) !== 0) return ok(undefined);
  const isSpace = (flags & THREE_D) !== 0;
  const side = isSpace ? 1 : facing(head.value);
  if (side === undefined) return refuse({ code: 'ENTITY_NOT_FLAT', place: head.value.place });
  const vertices: Vertex[] = [];
  let height: number | undefined;
  for (const part of parts) {
    const vertex = DxfNumbers.of(part, [10, 20]);
    if (!vertex.ok) return vertex;
    const n = vertex.value;
    if ((n.get(70) & FRAME) !== 0) continue;
    height ??= n.get(30);
    if (Math.abs(n.get(30) - height) > 1e-4) return refuse({ code: 'ENTITY_NOT_FLAT', place: n.place });
    vertices.push({ x: side * n.get(10), y: n.get(20), bulge: side * n.get(42) });
  }
  return ok(vertexCurves(vertices, (flags & CLOSED) !== 0));
}

const MOST_COPIES = 1000;

function insertOf(record: DxfRecord, layer: string): Result<DxfItem, FileRefusal> {
  const numbers = DxfNumbers.of(record, [10, 20]);
  if (!numbers.ok) return numbers;
  const n = numbers.value;
  const { place } = n;
  const block = textOf(record, 2);
  if (block === undefined || block === '') return refuse({ code: 'VALUE_MISSING', place, what: 'group 2' });
  const side = facing(n);
  if (side === undefined) return refuse({ code: 'ENTITY_NOT_FLAT', place });
  const scale = { x: n.get(41, 1), y: n.get(42, 1) };
  for (const value of [scale.x, scale.y])
    if (value === 0) return refuse({ code: 'NUMBER_OUT_OF_RANGE', place, what: 'scale', value });
  const [columns, rows] = [Math.max(1, n.get(70, 1)), Math.max(1, n.get(71, 1))];
  if (!(columns * rows <= MOST_COPIES))
    return refuse({ code: 'NUMBER_OUT_OF_RANGE', place, what: 'copies', value: columns * rows });
  const insert: Insert = {
    ...{ block, at: { x: n.get(10), y: n.get(20) }, scale, turn: n.get(50) },
    ...{ columns, rows, spacing: { x: n.get(44), y: n.get(45) }, facing: side },
  };
  return ok({ kind: 'insert', insert, layer, place });
}

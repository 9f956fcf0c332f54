import type { LayDrawing, PieceDrawing } from '@panewright/drawing';
import {
  bounds,
  moveOutline,
  type Outline,
  type Point,
  point,
  type Rigid,
  still,
} from '@panewright/geometry';
import { dxf2000 } from './dxf2000.ts';
import { type Block, type DxfContent, dxfR12 } from './dxfR12.ts';
import { blockName, type CentreMarks, type Entity, LAYER, pieceEntities } from './entities.ts';

export type DxfVersion = 'R12' | 'AC1015';

export interface DxfOptions {
  readonly version: DxfVersion;
  readonly centres: CentreMarks;
}

/**
 * One piece as a DXF file: a block on the numbered layers, inserted at the origin, with a note of units and a bar of
 * 100 mm below it.
 *
 * @accuracy coordinates rounded to 0.001 mm
 * @source sources.md#astm-d6673, #dxf-r12, #dxf-2000
 */
export function pieceDxf(piece: PieceDrawing, options: DxfOptions): string {
  const box = bounds(piece.boundary);
  const notes = piece.annotation.map(
    (words, index): Entity => ({
      kind: 'text',
      layer: LAYER.annotation,
      at: point((box.minX + box.maxX) / 2 - 40, (box.minY + box.maxY) / 2 - index * 8),
      height: 4,
      words,
    }),
  );
  const block = {
    name: blockName(piece.name),
    entities: [...pieceEntities(piece, still, options.centres), ...notes],
  };
  return written([block], scaleNote(point(box.minX, box.minY - 20)), [piece.boundary], options);
}

/** A roll with its pieces where they are cut: a block a piece, the roll's outline drawn, not cut. */
export function layDxf(lay: LayDrawing, options: DxfOptions): string {
  const names = new Set<string>();
  const blocks = lay.placed.map(({ piece, copy, place }): Block => {
    const drawing = lay.pieces.find(({ name }) => name === piece);
    if (drawing === undefined)
      throw new Error(`The lay ${lay.name} places ${piece}, which it does not hold.`);
    return {
      name: distinct(blockName(`${piece.slice(0, 24)}-${copy}`), names),
      entities: [...pieceEntities(drawing, place, options.centres), ...nameOf(drawing, place)],
    };
  });
  const corners = [point(lay.length, 0), point(lay.length, lay.width), point(0, lay.width), point(0, 0)];
  const [first, ...rest] = corners.map((to) => ({ kind: 'line', to }) as const);
  const roll: Outline = { segments: [first!, ...rest] };
  const loose: Entity[] = [
    { kind: 'outline', layer: LAYER.annotation, outline: roll },
    ...scaleNote(point(0, -20)),
  ];
  return written(blocks, loose, [roll], options);
}

function nameOf(piece: PieceDrawing, place: Rigid): Entity[] {
  const box = bounds(moveOutline(place, piece.boundary));
  const at = point((box.minX + box.maxX) / 2 - 12, (box.minY + box.maxY) / 2);
  return [{ kind: 'text', layer: LAYER.annotation, at, height: 6, words: piece.name }];
}

function distinct(name: string, taken: Set<string>): string {
  let free = name;
  for (let i = 2; taken.has(free); i++) free = `${name.slice(0, 26)}-${i}`;
  taken.add(free);
  return free;
}

function scaleNote(at: Point): Entity[] {
  const end = point(at.x + 100, at.y);
  const tick = (p: Point): Entity => ({
    kind: 'line',
    layer: LAYER.annotation,
    from: p,
    to: point(p.x, p.y + 4),
  });
  return [
    { kind: 'line', layer: LAYER.annotation, from: at, to: end },
    tick(at),
    tick(end),
    {
      kind: 'text',
      layer: LAYER.annotation,
      at: point(at.x, at.y - 8),
      height: 4,
      words: 'units: millimetres; this bar is 100 mm',
    },
  ];
}

function written(
  blocks: readonly Block[],
  loose: readonly Entity[],
  shown: readonly Outline[],
  { version }: DxfOptions,
): string {
  const boxes = shown.map(bounds);
  const extent = {
    minX: Math.min(...boxes.map((b) => b.minX)),
    minY: Math.min(...boxes.map((b) => b.minY)) - 30,
    maxX: Math.max(...boxes.map((b) => b.maxX)),
    maxY: Math.max(...boxes.map((b) => b.maxY)),
  };
  const content: DxfContent = { blocks, loose, extent };
  return version === 'R12' ? dxfR12(content) : dxf2000(content);
}

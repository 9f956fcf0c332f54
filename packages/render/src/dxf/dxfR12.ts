import { num } from '../number.ts';
import { type Entity, LAYER, plainText } from './entities.ts';

/** A block to write and the names it is placed by. */
export interface Block {
  readonly name: string;
  readonly entities: readonly Entity[];
}
export interface Placement {
  readonly block: string;
}
export interface DxfContent {
  readonly blocks: readonly Block[];
  /** Entities beside the blocks' insertions: the roll, the scale bar, the note of units. */
  readonly loose: readonly Entity[];
  readonly extent: {
    readonly minX: number;
    readonly minY: number;
    readonly maxX: number;
    readonly maxY: number;
  };
}

/**
 * An R12 file (AC1009): one block a piece, POLYLINE with bulges, no splines. The format has no field for units that
 * readers heed, so they are stated in a comment and in a note beside a bar of 100 mm.
 *
 * @accuracy coordinates rounded to 0.001 mm, bulges to 1e-9
 * @source sources.md#dxf-r12
 */
export function dxfR12({ blocks, loose, extent }: DxfContent): string {
  const lines: string[] = [];
  const put = (...pairs: readonly (readonly [number, string | number])[]) => {
    for (const [code, value] of pairs)
      lines.push(String(code), typeof value === 'number' ? decimal(value) : value);
  };
  put([999, 'units: millimetres']);
  put([0, 'SECTION'], [2, 'HEADER'], [9, '$ACADVER'], [1, 'AC1009'], [9, '$LUNITS'], [70, '2']);
  put(
    [9, '$EXTMIN'],
    [10, extent.minX],
    [20, extent.minY],
    [9, '$EXTMAX'],
    [10, extent.maxX],
    [20, extent.maxY],
  );
  put([0, 'ENDSEC'], [0, 'SECTION'], [2, 'TABLES']);
  put([0, 'TABLE'], [2, 'LTYPE'], [70, '1'], [0, 'LTYPE'], [2, 'CONTINUOUS'], [70, '0'], [3, 'Solid line']);
  put([72, '65'], [73, '0'], [40, 0], [0, 'ENDTAB']);
  const layers = ['0', ...Object.values(LAYER)];
  put([0, 'TABLE'], [2, 'LAYER'], [70, String(layers.length)]);
  layers.forEach((name, index) => {
    put([0, 'LAYER'], [2, name], [70, '0'], [62, String(COLOURS[index % COLOURS.length])], [6, 'CONTINUOUS']);
  });
  put([0, 'ENDTAB'], [0, 'ENDSEC'], [0, 'SECTION'], [2, 'BLOCKS']);
  for (const { name, entities } of blocks) {
    put([0, 'BLOCK'], [8, '0'], [2, name], [70, '0'], [10, 0], [20, 0], [30, 0], [3, name], [1, '']);
    for (const entity of entities) writeEntity(entity, put);
    put([0, 'ENDBLK'], [8, '0']);
  }
  put([0, 'ENDSEC'], [0, 'SECTION'], [2, 'ENTITIES']);
  for (const { name } of blocks)
    put([0, 'INSERT'], [8, LAYER.boundary], [2, name], [10, 0], [20, 0], [30, 0]);
  for (const entity of loose) writeEntity(entity, put);
  put([0, 'ENDSEC'], [0, 'EOF']);
  return `${lines.join('\r\n')}\r\n`;
}

/** Colours by number, one a layer: red for what is cut. */
export const COLOURS = [7, 1, 8, 8, 6, 3, 5, 4, 2, 7];

/** Always with a point: R12 readers take a bare integer for another type. */
export const decimal = (value: number): string => {
  const text = num(value);
  return text.includes('.') ? text : `${text}.0`;
};
export const bulgeText = (bulge: number): string => {
  const text = bulge.toFixed(9).replace(/0+$/, '');
  return text.endsWith('.') ? `${text}0` : text;
};

type Put = (...pairs: readonly (readonly [number, string | number])[]) => void;

function writeEntity(entity: Entity, put: Put): void {
  if (entity.kind === 'line')
    put(
      [0, 'LINE'],
      [8, entity.layer],
      [10, entity.from.x],
      [20, entity.from.y],
      [30, 0],
      [11, entity.to.x],
      [21, entity.to.y],
      [31, 0],
    );
  else if (entity.kind === 'point')
    put([0, 'POINT'], [8, entity.layer], [10, entity.at.x], [20, entity.at.y], [30, 0]);
  else if (entity.kind === 'text')
    put(
      [0, 'TEXT'],
      [8, entity.layer],
      [10, entity.at.x],
      [20, entity.at.y],
      [30, 0],
      [40, entity.height],
      [1, plainText(entity.words)],
    );
  else {
    put([0, 'POLYLINE'], [8, entity.layer], [66, '1'], [10, 0], [20, 0], [30, 0], [70, '1']);
    const { segments } = entity.outline;
    segments.forEach((_, index) => {
      const from = segments.at(index - 1)!.to;
      const segment = segments[index]!;
      put([0, 'VERTEX'], [8, entity.layer], [10, from.x], [20, from.y], [30, 0]);
      if (segment.kind === 'arc') put([42, bulgeText(segment.bulge)]);
    });
    put([0, 'SEQEND'], [8, entity.layer]);
  }
}

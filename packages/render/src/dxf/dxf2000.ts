import { bulgeText, COLOURS, type DxfContent, decimal } from './dxfR12.ts';
import { type Entity, LAYER, plainText } from './entities.ts';

/**
 * A DXF file of the 2000 format (AC1015): one block a piece, LWPOLYLINE with bulges, no splines, units stated in
 * $INSUNITS (4, millimetres) and $MEASUREMENT (1, metric), in each block record, in a note and beside a bar of 100 mm.
 *
 * @accuracy coordinates rounded to 0.001 mm, bulges to 1e-9
 * @source sources.md#dxf-2000
 */
export function dxf2000(content: DxfContent): string {
  const writer = new Writer();
  const ids = {
    ...{
      model: writer.handle(),
      paper: writer.handle(),
      modelBlock: writer.handle(),
      paperBlock: writer.handle(),
    },
    ...{ records: writer.handle(), dictionary: writer.handle(), groups: writer.handle() },
    blocks: content.blocks.map(() => ({
      record: writer.handle(),
      begin: writer.handle(),
      end: writer.handle(),
    })),
  };
  const body = new Writer(writer.next);
  tables(body, content, ids);
  blockSection(body, content, ids);
  entitySection(body, content, ids);
  objects(body, ids);
  const head = new Writer();
  const { extent } = content;
  head.put([999, 'units: millimetres'], [0, 'SECTION'], [2, 'HEADER']);
  head.put([9, '$ACADVER'], [1, 'AC1015'], [9, '$HANDSEED'], [5, body.next.toString(16).toUpperCase()]);
  head.put([9, '$INSUNITS'], [70, '4'], [9, '$MEASUREMENT'], [70, '1'], [9, '$LUNITS'], [70, '2']);
  head.put([9, '$EXTMIN'], [10, extent.minX], [20, extent.minY], [30, 0]);
  head.put([9, '$EXTMAX'], [10, extent.maxX], [20, extent.maxY], [30, 0], [0, 'ENDSEC']);
  head.put([0, 'SECTION'], [2, 'CLASSES'], [0, 'ENDSEC']);
  return `${[...head.lines, ...body.lines].join('\r\n')}\r\n`;
}

interface Ids {
  readonly model: string;
  readonly paper: string;
  readonly modelBlock: string;
  readonly paperBlock: string;
  readonly records: string;
  readonly dictionary: string;
  readonly groups: string;
  readonly blocks: readonly { readonly record: string; readonly begin: string; readonly end: string }[];
}

/** Pairs of the file, and handles counted up. */
class Writer {
  readonly lines: string[] = [];
  constructor(public next = 1) {}

  handle(): string {
    return (this.next++).toString(16).toUpperCase();
  }

  put(...pairs: readonly (readonly [number, string | number])[]): void {
    for (const [code, value] of pairs)
      this.lines.push(String(code), typeof value === 'number' ? decimal(value) : value);
  }

  table(name: string, handle: string, count: number): void {
    this.put([0, 'TABLE'], [2, name], [5, handle], [330, '0'], [100, 'AcDbSymbolTable'], [70, String(count)]);
  }

  record(kind: string, owner: string, subclass: string, name: string): void {
    this.put([0, kind], [kind === 'DIMSTYLE' ? 105 : 5, this.handle()], [330, owner]);
    this.put([100, 'AcDbSymbolTableRecord'], [100, subclass], [2, name], [70, '0']);
  }
}

function tables(w: Writer, content: DxfContent, ids: Ids): void {
  w.put([0, 'SECTION'], [2, 'TABLES']);
  viewport(w, content);
  lineTypesAndLayers(w);
  styles(w);
  blockRecords(w, content, ids);
  w.put([0, 'ENDSEC']);
}

/** The view a reader opens with: all of the drawing. */
function viewport(w: Writer, { extent }: DxfContent): void {
  const owner = w.handle();
  w.table('VPORT', owner, 1);
  w.record('VPORT', owner, 'AcDbViewportTableRecord', '*ACTIVE');
  const height = Math.max(extent.maxY - extent.minY, 1);
  w.put(
    [10, 0],
    [20, 0],
    [11, 1],
    [21, 1],
    [12, (extent.minX + extent.maxX) / 2],
    [22, (extent.minY + extent.maxY) / 2],
  );
  w.put([40, height], [41, Math.max((extent.maxX - extent.minX) / height, 0.1)], [0, 'ENDTAB']);
}

function lineTypesAndLayers(w: Writer): void {
  const types = w.handle();
  w.table('LTYPE', types, 3);
  for (const name of ['BYBLOCK', 'BYLAYER', 'CONTINUOUS']) {
    w.record('LTYPE', types, 'AcDbLinetypeTableRecord', name);
    w.put([3, ''], [72, '65'], [73, '0'], [40, 0]);
  }
  w.put([0, 'ENDTAB']);
  const layers = w.handle();
  const names = ['0', ...Object.values(LAYER)];
  w.table('LAYER', layers, names.length);
  names.forEach((name, index) => {
    w.record('LAYER', layers, 'AcDbLayerTableRecord', name);
    w.put([62, String(COLOURS[index % COLOURS.length])], [6, 'CONTINUOUS']);
  });
  w.put([0, 'ENDTAB']);
}

/** The tables a reader expects, with the one entry each must have. */
function styles(w: Writer): void {
  const fonts = w.handle();
  w.table('STYLE', fonts, 1);
  w.record('STYLE', fonts, 'AcDbTextStyleTableRecord', 'STANDARD');
  w.put([40, 0], [41, 1], [50, 0], [71, '0'], [42, 2.5], [3, 'txt'], [4, ''], [0, 'ENDTAB']);
  for (const name of ['VIEW', 'UCS']) {
    w.table(name, w.handle(), 0);
    w.put([0, 'ENDTAB']);
  }
  const applications = w.handle();
  w.table('APPID', applications, 1);
  w.record('APPID', applications, 'AcDbRegAppTableRecord', 'ACAD');
  w.put([0, 'ENDTAB']);
  const dimensions = w.handle();
  w.table('DIMSTYLE', dimensions, 1);
  w.put([100, 'AcDbDimStyleTable']);
  w.record('DIMSTYLE', dimensions, 'AcDbDimStyleTableRecord', 'STANDARD');
  w.put([0, 'ENDTAB']);
}

function blockRecords(w: Writer, { blocks }: DxfContent, ids: Ids): void {
  w.table('BLOCK_RECORD', ids.records, blocks.length + 2);
  const record = (handle: string, name: string) =>
    w.put(
      ...([
        [0, 'BLOCK_RECORD'],
        [5, handle],
        [330, ids.records],
        [100, 'AcDbSymbolTableRecord'],
      ] as const),
      ...([
        [100, 'AcDbBlockTableRecord'],
        [2, name],
      ] as const),
    );
  record(ids.model, '*MODEL_SPACE');
  record(ids.paper, '*PAPER_SPACE');
  blocks.forEach(({ name }, index) => {
    record(ids.blocks[index]!.record, name);
  });
  w.put([0, 'ENDTAB']);
}

function blockSection(w: Writer, { blocks }: DxfContent, ids: Ids): void {
  w.put([0, 'SECTION'], [2, 'BLOCKS']);
  const block = (name: string, owner: string, begin: string, end: string, entities: readonly Entity[]) => {
    w.put([0, 'BLOCK'], [5, begin], [330, owner], [100, 'AcDbEntity'], [8, '0'], [100, 'AcDbBlockBegin']);
    w.put([2, name], [70, '0'], [10, 0], [20, 0], [30, 0], [3, name], [1, '']);
    for (const entity of entities) writeEntity(entity, owner, w);
    w.put([0, 'ENDBLK'], [5, end], [330, owner], [100, 'AcDbEntity'], [8, '0'], [100, 'AcDbBlockEnd']);
  };
  block('*MODEL_SPACE', ids.model, ids.modelBlock, w.handle(), []);
  block('*PAPER_SPACE', ids.paper, ids.paperBlock, w.handle(), []);
  blocks.forEach(({ name, entities }, index) => {
    const { record, begin, end } = ids.blocks[index]!;
    block(name, record, begin, end, entities);
  });
  w.put([0, 'ENDSEC']);
}

function entitySection(w: Writer, { blocks, loose }: DxfContent, ids: Ids): void {
  w.put([0, 'SECTION'], [2, 'ENTITIES']);
  for (const { name } of blocks) {
    w.put([0, 'INSERT'], [5, w.handle()], [330, ids.model], [100, 'AcDbEntity'], [8, LAYER.boundary]);
    w.put([100, 'AcDbBlockReference'], [2, name], [10, 0], [20, 0], [30, 0]);
  }
  for (const entity of loose) writeEntity(entity, ids.model, w);
  w.put([0, 'ENDSEC']);
}

function objects(w: Writer, ids: Ids): void {
  w.put(
    [0, 'SECTION'],
    [2, 'OBJECTS'],
    [0, 'DICTIONARY'],
    [5, ids.dictionary],
    [330, '0'],
    [100, 'AcDbDictionary'],
  );
  w.put([281, '1'], [3, 'ACAD_GROUP'], [350, ids.groups]);
  w.put([0, 'DICTIONARY'], [5, ids.groups], [330, ids.dictionary], [100, 'AcDbDictionary'], [281, '1']);
  w.put([0, 'ENDSEC'], [0, 'EOF']);
}

function writeEntity(entity: Entity, owner: string, w: Writer): void {
  const begin = (kind: string) =>
    w.put([0, kind], [5, w.handle()], [330, owner], [100, 'AcDbEntity'], [8, entity.layer]);
  if (entity.kind === 'line') {
    begin('LINE');
    w.put([100, 'AcDbLine'], [10, entity.from.x], [20, entity.from.y], [30, 0]);
    w.put([11, entity.to.x], [21, entity.to.y], [31, 0]);
  } else if (entity.kind === 'point') {
    begin('POINT');
    w.put([100, 'AcDbPoint'], [10, entity.at.x], [20, entity.at.y], [30, 0]);
  } else if (entity.kind === 'text') {
    begin('TEXT');
    w.put([100, 'AcDbText'], [10, entity.at.x], [20, entity.at.y], [30, 0], [40, entity.height]);
    w.put([1, plainText(entity.words)], [100, 'AcDbText']);
  } else {
    begin('LWPOLYLINE');
    const { segments } = entity.outline;
    w.put([100, 'AcDbPolyline'], [90, String(segments.length)], [70, '1']);
    segments.forEach((segment, index) => {
      const from = segments.at(index - 1)!.to;
      w.put([10, from.x], [20, from.y]);
      if (segment.kind === 'arc') w.put([42, bulgeText(segment.bulge)]);
    });
  }
}

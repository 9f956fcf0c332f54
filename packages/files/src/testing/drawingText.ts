/** Text of small files, for tests. */

export type Pair = readonly [number, string | number];

/** Pairs as a DXF file has them: an entity is its kind and then its pairs. */
export const pairs = (...all: readonly Pair[]): string =>
  all.map(([code, value]) => `${code}\n${value}\n`).join('');

export interface DxfParts {
  readonly header?: readonly Pair[];
  readonly tables?: string;
  readonly blocks?: string;
}

const section = (name: string, body: string) => `0\nSECTION\n2\n${name}\n${body}0\nENDSEC\n`;
const MILLIMETRES: readonly Pair[] = [
  [9, '$INSUNITS'],
  [70, 4],
];

/** A DXF file of the entities given; in millimetres unless another header is. */
export const dxfText = (entities: string, { header = MILLIMETRES, tables, blocks }: DxfParts = {}): string =>
  [
    section('HEADER', pairs(...header)),
    tables === undefined ? '' : section('TABLES', tables),
    blocks === undefined ? '' : section('BLOCKS', blocks),
    section('ENTITIES', entities),
    '0\nEOF\n',
  ].join('');

export const line = (x1: number, y1: number, x2: number, y2: number, layer = '0'): string =>
  pairs([0, 'LINE'], [8, layer], [10, x1], [20, y1], [11, x2], [21, y2]);

export const arc = (
  x: number,
  y: number,
  radius: number,
  from: number,
  to: number,
  ...more: readonly Pair[]
) => pairs([0, 'ARC'], [8, '0'], [10, x], [20, y], [40, radius], [50, from], [51, to], ...more);

/** A closed LWPOLYLINE; each corner x, y and, where the edge leaving it bends, its bulge. */
export const polygon = (
  corners: readonly (readonly [number, number, number?])[],
  layer = '0',
  ...more: readonly Pair[]
): string =>
  pairs(
    [0, 'LWPOLYLINE'],
    [5, 'A1'],
    [8, layer],
    [90, corners.length],
    [70, 1],
    ...corners.flatMap(([x, y, bulge]): readonly Pair[] => [
      [10, x],
      [20, y],
      ...(bulge === undefined ? [] : ([[42, bulge]] as const)),
    ]),
    ...more,
  );

export const rectangle = (x: number, y: number, width: number, height: number, layer = '0'): string =>
  polygon(
    [
      [x, y],
      [x + width, y],
      [x + width, y + height],
      [x, y + height],
    ],
    layer,
  );

/** A page whose user unit is a millimetre. */
export const svgText = (
  body: string,
  attributes = 'width="1000mm" height="1000mm" viewBox="0 0 1000 1000"',
): string =>
  `<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" ${attributes}>${body}</svg>`;

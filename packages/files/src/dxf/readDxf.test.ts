import { area, bounds, length, nearest, point } from '@panewright/geometry';
import { mm } from '@panewright/quantity';
import { expect, test } from 'vitest';
import { arc, dxfText, line, type Pair, pairs, polygon, rectangle } from '../testing/drawingText.ts';
import { readFile, refusalOf } from '../testing/read.ts';

const only = (text: string, told = {}) => {
  const { outlines } = readFile(text, told);
  expect(outlines.length).toBe(1);
  return outlines[0]!;
};
const header = (...all: readonly Pair[]) => ({ header: all });

// Oracle throughout: figures worked by hand from the DXF reference's meaning of each group code.
test.each([
  [1, 25.4],
  [2, 304.8],
  [4, 1],
  [5, 10],
  [6, 1000],
  [10, 914.4],
  [14, 100],
])('$INSUNITS %i makes one unit %f mm', (code, millimetres) => {
  const text = dxfText(rectangle(0, 0, 2, 1), header([9, '$INSUNITS'], [70, code]));
  expect(bounds(only(text).outline).width).toBeCloseTo(2 * millimetres, 9);
});

test('without a unit the file is asked for one, metric or imperial first as it says', () => {
  for (const [measurement, first] of [
    [0, 'in'],
    [1, 'mm'],
  ] as const) {
    const text = dxfText(
      rectangle(0, 0, 24, 12),
      header([9, '$INSUNITS'], [70, 0], [9, '$MEASUREMENT'], [70, measurement]),
    );
    const refusal = refusalOf(text);
    expect(refusal).toMatchObject({ code: 'UNIT_NOT_STATED', width: 24, height: 12 });
    if (refusal.code === 'UNIT_NOT_STATED') expect(refusal.offered[0]).toBe(first);
    expect(bounds(only(text, { unit: 'in' }).outline).width).toBeCloseTo(609.6, 9);
  }
  expect(refusalOf(dxfText(rectangle(0, 0, 1, 1), header([9, '$INSUNITS'], [70, 3])))).toEqual({
    code: 'UNIT_NOT_READ',
    stated: '$INSUNITS 3',
  });
});

test('a unit that is told overrules the file, and a note says so', () => {
  const read = readFile(dxfText(rectangle(0, 0, 24, 12)), { unit: 'in' });
  expect(bounds(read.outlines[0]!.outline).width).toBeCloseTo(609.6, 9);
  expect(read.notes).toContainEqual({ code: 'UNIT_OVERRULED', stated: 'mm', used: 'in' });
});

test('a bulge bends the edge that leaves its vertex, to the right for a positive one', () => {
  const { outline } = only(
    dxfText(
      polygon([
        [0, 0, 1],
        [100, 0],
        [100, 50],
        [0, 50],
      ]),
    ),
  );
  expect(area(outline)).toBeCloseTo(5000 + (Math.PI * 2500) / 2, 6);
  expect(bounds(outline).minY).toBeCloseTo(-50, 9);
});

test('an arc runs anticlockwise from its start angle, over 360° where it must', () => {
  // A half disc about (0, 0) open to the left of x = 0: from 270° on over 0° to 90°.
  const { outline } = only(dxfText(arc(0, 0, 50, 270, 90) + line(0, 50, 0, -50)));
  expect(bounds(outline)).toMatchObject({ minX: expect.closeTo(0, 9), maxX: expect.closeTo(50, 9) });
  expect(area(outline)).toBeCloseTo((Math.PI * 2500) / 2, 6);
});

test('an arc seen from behind has its x turned about', () => {
  const behind: readonly Pair[] = [
    [210, 0],
    [220, 0],
    [230, -1],
  ];
  const { outline } = only(dxfText(arc(-10, 0, 50, 270, 90, ...behind) + line(10, 50, 10, -50)));
  expect(bounds(outline)).toMatchObject({ minX: expect.closeTo(-40, 9), maxX: expect.closeTo(10, 9) });
  const poly = only(
    dxfText(
      polygon(
        [
          [0, 0, 1],
          [100, 0],
          [100, 50],
          [0, 50],
        ],
        '0',
        ...behind,
      ),
    ),
  );
  expect(bounds(poly.outline)).toMatchObject({ minX: expect.closeTo(-100, 9), minY: expect.closeTo(-50, 9) });
});

test('an entity that faces aside or is not level is refused with its handle', () => {
  expect(
    refusalOf(
      dxfText(
        polygon(
          [
            [0, 0],
            [9, 0],
            [9, 9],
          ],
          '0',
          [210, 1],
          [220, 0],
          [230, 0],
        ),
      ),
    ),
  ).toEqual({
    code: 'ENTITY_NOT_FLAT',
    place: { line: 16, entity: 'LWPOLYLINE', id: 'A1' },
  });
  expect(
    refusalOf(dxfText(pairs([0, 'LINE'], [10, 0], [20, 0], [30, 5], [11, 1], [21, 1], [31, 0]))).code,
  ).toBe('ENTITY_NOT_FLAT');
});

test('loose lines and arcs in any order and direction are joined', () => {
  const sides = [line(0, 0, 300, 0), line(300, 200, 300, 0), line(0, 200, 300, 200), line(0, 0, 0, 200)];
  for (const order of [
    [0, 1, 2, 3],
    [2, 0, 3, 1],
    [3, 1, 0, 2],
  ]) {
    const read = readFile(dxfText(order.map((i) => sides[i]).join('')));
    expect(area(read.outlines[0]!.outline)).toBeCloseTo(60_000, 6);
    expect(read.notes).toEqual([]);
  }
});

test('ends up to the stated distance apart are brought together and told; wider ones are refused with the place', () => {
  const gapped = dxfText(
    line(0, 0, 300, 0) + line(300, 0.4, 300, 200) + line(300, 200, 0, 200) + line(0, 200, 0, 0),
  );
  const read = readFile(gapped);
  expect(read.notes).toEqual([
    {
      code: 'GAPS_CLOSED',
      count: 1,
      widest: expect.closeTo(0.4, 9),
      at: { x: 300, y: expect.closeTo(0.2, 9) },
    },
  ]);
  expect(area(read.outlines[0]!.outline)).toBeCloseTo(60_000 - 30, 6);
  expect(refusalOf(gapped, { closeWithin: mm(0.3) })).toMatchObject({
    code: 'OUTLINE_OPEN',
    gap: expect.closeTo(0.4, 9),
    closeWithin: 0.3,
    layer: '0',
  });
  const open = pairs(
    [0, 'LWPOLYLINE'],
    [5, '2F'],
    [8, 'CUT'],
    [90, 4],
    [70, 0],
    ...[
      [0, 0],
      [300, 0],
      [300, 200],
      [0, 7],
    ].flatMap(([x, y]): readonly Pair[] => [
      [10, x!],
      [20, y!],
    ]),
  );
  expect(refusalOf(dxfText(open))).toEqual({
    ...{
      code: 'OUTLINE_OPEN',
      from: { x: 0, y: 7 },
      to: { x: 0, y: 0 },
      gap: 7,
      closeWithin: 0.5,
      layer: 'CUT',
    },
    place: { line: 16, entity: 'LWPOLYLINE', id: '2F' },
  });
});

test('three ends at a point are refused: which way the outline goes is not said', () => {
  const text = dxfText(rectangleLines(0, 0, 300, 200) + line(0, 0, 300, 200));
  expect(refusalOf(text)).toMatchObject({ code: 'ENDS_MEET', ends: 3, layer: '0' });
});

const rectangleLines = (x: number, y: number, width: number, height: number, layer = '0') =>
  line(x, y, x + width, y, layer) +
  line(x + width, y, x + width, y + height, layer) +
  line(x + width, y + height, x, y + height, layer) +
  line(x, y + height, x, y, layer);

test('what is drawn twice counts once', () => {
  const lines = readFile(dxfText(rectangleLines(0, 0, 300, 200) + line(300, 0, 0, 0)));
  expect(lines.outlines.length).toBe(1);
  expect(lines.notes).toMatchObject([{ code: 'DUPLICATES_LEFT_OUT', count: 1 }]);
  const shifted = polygon([
    [300, 0],
    [300, 200],
    [0, 200],
    [0, 0],
  ]);
  const whole = readFile(dxfText(rectangle(0, 0, 300, 200) + shifted));
  expect(whole.outlines.length).toBe(1);
  expect(whole.notes).toMatchObject([
    { code: 'DUPLICATES_LEFT_OUT', count: 1, place: { entity: 'LWPOLYLINE' } },
  ]);
});

test('scraps at a joint are left out and told', () => {
  const scrap = line(300, 0, 300, 0.2);
  const read = readFile(
    dxfText(
      line(0, 0, 300, 0) + scrap + line(300, 0.2, 300, 200) + line(300, 200, 0, 200) + line(0, 200, 0, 0),
    ),
  );
  expect(Math.abs(area(read.outlines[0]!.outline) - 60_000)).toBeLessThan(60);
});

test('a loop in the line is refused with the crossing', () => {
  expect(
    refusalOf(
      dxfText(
        polygon(
          [
            [0, 0],
            [100, 100],
            [100, 0],
            [0, 100],
          ],
          'CUT',
        ),
      ),
    ),
  ).toMatchObject({
    code: 'FILE_OUTLINE_CROSSES_ITSELF',
    at: { x: expect.closeTo(50, 9), y: expect.closeTo(50, 9) },
    layer: 'CUT',
    places: [
      { entity: 'LWPOLYLINE', id: 'A1' },
      { entity: 'LWPOLYLINE', id: 'A1' },
    ],
  });
});

test('of nested outlines the outer is the outline and holds the others, with their depth', () => {
  const text =
    rectangle(0, 0, 600, 400, 'CUT') +
    rectangle(20, 20, 560, 360, 'SEW') +
    rectangle(50, 50, 20, 20, 'HOLE') +
    rectangle(700, 0, 50, 50, 'CUT');
  const { outlines, layers } = readFile(dxfText(text));
  expect(outlines.map(({ inner }) => inner.map(({ layer, depth }) => [layer, depth]))).toEqual([
    [
      ['SEW', 1],
      ['HOLE', 2],
    ],
    [],
  ]);
  expect(layers).toEqual(['CUT', 'SEW', 'HOLE']);
  const sew = readFile(dxfText(text), { layers: ['SEW'] });
  expect(sew.outlines.map(({ outline }) => area(outline))).toEqual([expect.closeTo(560 * 360, 6)]);
  expect(refusalOf(dxfText(text), { layers: ['NONE'] })).toEqual({
    code: 'NO_OUTLINE',
    layers: ['CUT', 'SEW', 'HOLE'],
  });
});

test('outlines that overlap are told', () => {
  const { notes } = readFile(dxfText(rectangle(0, 0, 100, 100) + rectangle(50, 50, 100, 100)));
  expect(notes).toEqual([{ code: 'OUTLINES_OVERLAP', first: 0, second: 1 }]);
});

const block = (name: string, body: string, x = 0, y = 0) =>
  `${pairs([0, 'BLOCK'], [8, '0'], [2, name], [70, 0], [10, x], [20, y])}${body}${pairs([0, 'ENDBLK'])}`;
const insert = (name: string, x: number, y: number, ...more: readonly Pair[]) =>
  pairs([0, 'INSERT'], [5, 'B7'], [8, 'CUT'], [2, name], [10, x], [20, y], ...more);

test('a block within a block is scaled, turned and moved by both', () => {
  const blocks =
    block('INNER', rectangle(0, 0, 10, 10)) + block('OUTER', insert('INNER', 100, 0, [41, 2], [42, 2]));
  const { outline, layer, name } = only(dxfText(insert('OUTER', 1000, 0, [50, 90]), { blocks }));
  // (100..120, 0..20) turned by 90° is (-20..0, 100..120), moved by 1000.
  expect(bounds(outline)).toMatchObject({
    minX: expect.closeTo(980, 9),
    maxX: expect.closeTo(1000, 9),
    minY: expect.closeTo(100, 9),
  });
  expect([layer, name]).toEqual(['CUT', 'OUTER']);
});

test('an insert seen from behind is mirrored', () => {
  const blocks = block(
    'P',
    polygon([
      [0, 0],
      [100, 0],
      [100, 10],
      [0, 50],
    ]),
  );
  const { outline } = only(dxfText(insert('P', -500, 0, [230, -1], [210, 0], [220, 0]), { blocks }));
  expect(bounds(outline)).toMatchObject({ minX: expect.closeTo(400, 9), maxX: expect.closeTo(500, 9) });
  expect(nearest(outline, point(500, 50)).distance).toBeLessThan(1e-9);
});

test('a missing block, a block in itself and unbounded copies are refused', () => {
  expect(refusalOf(dxfText(insert('NONE', 0, 0)))).toMatchObject({
    code: 'REFERENCE_MISSING',
    name: 'NONE',
    place: { entity: 'INSERT', id: 'B7' },
  });
  const blocks = block('A', insert('B', 0, 0)) + block('B', insert('A', 0, 0));
  expect(refusalOf(dxfText(insert('A', 0, 0), { blocks }))).toMatchObject({
    code: 'REFERENCE_CIRCULAR',
    name: 'A',
  });
  const many = Array.from({ length: 12 }, (_, i) =>
    block(`N${i}`, insert(`N${i + 1}`, 0, 0, [70, 30], [71, 30], [44, 1], [45, 1])),
  ).join('');
  const bomb = dxfText(insert('N0', 0, 0), { blocks: many + block('N12', rectangle(0, 0, 1, 1)) });
  expect(refusalOf(bomb)).toMatchObject({ code: 'FILE_TOO_LARGE', what: 'entities' });
});

test('hidden layers, the paper and kinds that draw no outline are left out and counted', () => {
  const tables = pairs(
    [0, 'TABLE'],
    [2, 'LAYER'],
    [0, 'LAYER'],
    [2, 'OFF'],
    [62, -3],
    [0, 'LAYER'],
    [2, 'FROZEN'],
    [70, 1],
    [62, 3],
    [0, 'ENDTAB'],
  );
  const entities =
    rectangle(0, 0, 100, 100) +
    rectangle(0, 200, 10, 10, 'off') +
    rectangle(0, 300, 10, 10, 'FROZEN') +
    polygon(
      [
        [0, 0],
        [5, 0],
        [5, 5],
      ],
      '0',
      [67, 1],
    ) +
    pairs([0, 'TEXT'], [1, 'hello'], [0, 'POINT'], [10, 0], [20, 0], [0, 'POINT'], [10, 0], [20, 0]);
  const { outlines, notes } = readFile(dxfText(entities, { tables }));
  expect(outlines.length).toBe(1);
  expect(notes).toEqual([
    { code: 'KIND_LEFT_OUT', kind: 'TEXT', count: 1 },
    { code: 'KIND_LEFT_OUT', kind: 'POINT', count: 2 },
    { code: 'HIDDEN_LEFT_OUT', count: 1, layer: 'off' },
    { code: 'HIDDEN_LEFT_OUT', count: 1, layer: 'FROZEN' },
    { code: 'PAPER_SPACE_LEFT_OUT', count: 1 },
  ]);
});

test('ticks and crosses beside an outline are left out and told; alone they are no outline', () => {
  const marks = line(10, 50, 20, 50) + line(15, 45, 15, 55);
  const { notes } = readFile(dxfText(rectangle(0, 0, 100, 100) + marks));
  expect(notes).toMatchObject([{ code: 'OPEN_LINES_LEFT_OUT', count: 2, layer: '0' }]);
  expect(refusalOf(dxfText(marks)).code).toBe('OUTLINE_OPEN');
});

test('names are read by the code page the file states', () => {
  // Oracle: windows-1250 has Č at C8; windows-1251 has Ж at C6; from release 2007 names are UTF-8.
  for (const [version, page, bytes, name] of [
    ['AC1015', 'ANSI_1250', [0xc8], 'Č'],
    ['AC1015', 'ansi_1251', [0xc6], 'Ж'],
    ['AC1009', 'dos850', [0x90], 'É'],
    ['AC1021', 'ANSI_1252', [0xc4, 0x8c], 'Č'],
  ] as const) {
    const text = dxfText(
      rectangle(0, 0, 100, 100, '@'),
      header([9, '$ACADVER'], [1, version], [9, '$DWGCODEPAGE'], [3, page], [9, '$INSUNITS'], [70, 4]),
    );
    const file = Uint8Array.from(
      [...text].flatMap((letter) => (letter === '@' ? bytes : [letter.charCodeAt(0)])),
    );
    expect(readFile(file).outlines[0]!.layer).toBe(name);
  }
  const escaped = only(dxfText(rectangle(0, 0, 9, 9, '\\U+010Celo')));
  expect(escaped.layer).toBe('Čelo');
});

test('a spline that states other counts than it has, falling knots or only fit points is refused', () => {
  const spline = (knots: readonly number[], ...more: readonly Pair[]) =>
    dxfText(pairs([0, 'SPLINE'], [5, 'C3'], [71, 3], ...knots.map((k) => [40, k] as const), ...more));
  const four: readonly Pair[] = [
    [10, 0],
    [20, 0],
    [10, 0],
    [20, 9],
    [10, 9],
    [20, 9],
    [10, 9],
    [20, 0],
  ];
  const place = { entity: 'SPLINE', id: 'C3' };
  const clamped = [0, 0, 0, 0, 1, 1, 1, 1];
  expect(refusalOf(spline(clamped, [72, 9], ...four))).toMatchObject({
    code: 'COUNT_WRONG',
    what: 'knots',
    stated: 9,
    found: 8,
    place,
  });
  expect(refusalOf(spline(clamped.slice(1), ...four))).toMatchObject({
    code: 'COUNT_WRONG',
    stated: 8,
    found: 7,
    place,
  });
  expect(refusalOf(spline([0, 0, 0, 0, 1, 1, 0, 1], ...four))).toMatchObject({
    code: 'SPLINE_KNOTS_WRONG',
    place,
  });
  expect(refusalOf(spline([0, 0, 0, 0, 0, 0, 0, 0], ...four))).toMatchObject({
    code: 'SPLINE_KNOTS_WRONG',
    place,
  });
  expect(refusalOf(spline([], [11, 0], [21, 0], [11, 5], [21, 5]))).toMatchObject({
    code: 'SPLINE_WITHOUT_CONTROL_POINTS',
    place,
  });
});

test('an old polyline is read with its bulges, without the frame of a fitted spline', () => {
  const vertex = (x: number, y: number, ...more: readonly Pair[]) =>
    pairs([0, 'VERTEX'], [8, '0'], [10, x], [20, y], ...more);
  const head = (flags: number) => pairs([0, 'POLYLINE'], [8, '0'], [66, 1], [70, flags]);
  const { outline } = only(
    dxfText(
      head(1) +
        vertex(0, 0, [42, 1]) +
        vertex(100, 0) +
        vertex(100, 50) +
        vertex(50, 500, [70, 16]) +
        vertex(0, 50) +
        pairs([0, 'SEQEND']),
    ),
  );
  expect(length(outline)).toBeCloseTo(200 + 50 * Math.PI, 6);
  expect(refusalOf(dxfText(head(1) + vertex(0, 0) + vertex(9, 0) + line(0, 0, 1, 1)))).toMatchObject({
    code: 'FILE_UNREADABLE_AT',
    wanted: 'VERTEX or SEQEND',
    found: 'LINE',
  });
});

import { area, bounds, length, nearest, point } from '@panewright/geometry';
import fc from 'fast-check';
import SvgPath from 'svgpath';
import { expect, test } from 'vitest';
import { svgText } from '../testing/drawingText.ts';
import { readFile, refusalOf } from '../testing/read.ts';

const only = (body: string, attributes?: string, told = {}) => {
  const { outlines } = readFile(svgText(body, attributes), told);
  expect(outlines.length).toBe(1);
  return outlines[0]!;
};
const areaOf = (body: string, attributes?: string) => area(only(body, attributes).outline);

// Oracle: CSS Values and Units, 1 in = 25.4 mm = 96 px = 72 pt = 6 pc, 1 Q = 1/4 mm.
test.each([
  ['100mm', 100],
  ['10cm', 100],
  ['1in', 25.4],
  ['72pt', 25.4],
  ['6pc', 25.4],
  ['400Q', 100],
])('a page %s wide over 100 units makes a unit %f / 100 mm', (width, millimetres) => {
  const { outline } = only('<rect width="50" height="10"/>', `width="${width}" viewBox="0 0 100 50"`);
  expect(bounds(outline).width).toBeCloseTo(millimetres / 2, 9);
});

test('a page in pixels, of no size, or in mm without a view box is asked for its unit', () => {
  const body = '<rect width="96" height="48"/>';
  for (const attributes of [
    'width="960" height="480"',
    'viewBox="0 0 96 48"',
    'width="100%" viewBox="0 0 96 48"',
    'width="210mm" height="297mm"',
    '',
  ]) {
    expect(refusalOf(svgText(body, attributes))).toMatchObject({
      code: 'UNIT_NOT_STATED',
      format: 'svg',
      width: 96,
      height: 48,
    });
    expect(bounds(only(body, attributes, { unit: 'mm' }).outline).width).toBeCloseTo(96, 9);
  }
  const sized = 'width="960px" height="480px" viewBox="0 0 96 48"';
  // Ten pixels to a unit.
  for (const [unit, width] of [
    ['px', 254],
    ['px90', (960 / 90) * 25.4],
    ['px72', (960 / 72) * 25.4],
    ['mm', 96],
    ['in', 96 * 25.4],
  ] as const)
    expect(bounds(only(body, sized, { unit }).outline).width).toBeCloseTo(width, 6);
});

test('y is turned up', () => {
  const { outline } = only('<path d="M0 0H100V50L0 200Z"/>');
  expect(nearest(outline, point(0, -200)).distance).toBeLessThan(1e-9);
});

test('basic shapes have their closed-form areas', () => {
  expect(areaOf('<rect x="10" y="10" width="300" height="200"/>')).toBeCloseTo(60_000, 6);
  expect(areaOf('<rect width="300" height="200" rx="30"/>')).toBeCloseTo(60_000 - (4 - Math.PI) * 900, 6);
  // A radius beyond half the side is half the side: a stadium.
  expect(areaOf('<rect width="300" height="200" ry="400" rx="100"/>')).toBeCloseTo(
    20_000 + Math.PI * 10_000,
    6,
  );
  expect(areaOf('<circle cx="5" cy="5" r="100"/>')).toBeCloseTo(Math.PI * 10_000, 6);
  expect(areaOf('<polygon points="0,0 300 0,300-200"/>')).toBeCloseTo(30_000, 6);
  expect(areaOf('<polyline points="0 0 300 0 300 200 0 0"/>')).toBeCloseTo(30_000, 6);
  expect(areaOf('<line x2="300"/><line x1="300" x2="300" y2="200"/><line x1="300" y1="200"/>')).toBeCloseTo(
    30_000,
    6,
  );
  expect(Math.abs(areaOf('<ellipse rx="300" ry="200"/>') / (Math.PI * 60_000) - 1)).toBeLessThan(1e-3);
  const bent = only('<rect width="300" height="200" rx="60" ry="30"/>').outline;
  expect(Math.abs(area(bent) - (60_000 - (4 - Math.PI) * 1800))).toBeLessThan(0.05 * 400);
});

test('every path command, long and short, draws what it says', () => {
  expect(areaOf('<path d="m10,10h100v50h-100z"/>')).toBeCloseTo(5000, 6);
  expect(areaOf('<path d="M0 0 100 0 100 50 0 50z"/>')).toBeCloseTo(5000, 6);
  // Two half circles; flags written without blanks, as the grammar allows.
  expect(areaOf('<path d="M0 0a50 50 0 01100 0A50 50 0 110 0z"/>')).toBeCloseTo(Math.PI * 2500, 6);
  // Radii too small are scaled up until they reach: a half circle of radius 50.
  expect(areaOf('<path d="M0 0A1 1 0 0 1 100 0Z"/>')).toBeCloseTo((Math.PI * 2500) / 2, 6);
  // A parabola's cap: two thirds of the box about it.
  expect(Math.abs(areaOf('<path d="M0 0Q50 100 100 0Z"/>') - (2 / 3) * 100 * 50)).toBeLessThan(5);
  expect(Math.abs(areaOf('<path d="M0 0Q25 50 50 0T100 0V200H0Z"/>') - 20_000)).toBeLessThan(5);
  expect(Math.abs(areaOf('<path d="M0 0C0 50 50 50 50 0S100-50 100 0V200H0Z"/>') - 20_000)).toBeLessThan(5);
});

test('an arc’s four flags choose the four ways round', () => {
  // Chord 100, radius 100: the small arc sweeps 60°, the large one 300°. Caps by the closed form.
  const small = (100 ** 2 / 2) * (Math.PI / 3 - Math.sin(Math.PI / 3));
  const large = Math.PI * 100 ** 2 - small;
  for (const [flags, cap, side] of [
    ['0 0', small, 1],
    ['0 1', small, -1],
    ['1 0', large, 1],
    ['1 1', large, -1],
  ] as const) {
    const { outline } = only(`<path d="M100 100A100 100 0 ${flags} 200 100Z"/>`);
    expect(area(outline)).toBeCloseTo(cap, 6);
    // Sweep 0 goes anticlockwise to the eye: from left to right below the chord.
    const box = bounds(outline);
    const below = -100 - box.minY;
    expect(below > box.maxY + 100 ? 1 : -1).toBe(side);
  }
});

test('subpaths are outlines of their own, and a path goes on from where it was closed', () => {
  const { outlines } = readFile(svgText('<path d="M0 0h100v100h-100zM200 0h100v100h-100zl-50 -10v-50z"/>'));
  expect(outlines.map(({ outline }) => Math.round(area(outline)))).toEqual([10_000, 10_000, 1250]);
});

test('nested transforms act from the inside out', () => {
  const body =
    '<g transform="translate(100 50)"><g transform="rotate(90)"><rect transform="scale(2,3)" width="10" height="10"/></g></g>';
  const { outline } = only(body);
  // By hand: 20 × 30, turned a quarter clockwise to the eye, from (100, 50): x 70 to 100, y 50 to 70 downwards.
  expect(bounds(outline)).toMatchObject({
    minX: expect.closeTo(70, 9),
    maxX: expect.closeTo(100, 9),
    minY: expect.closeTo(-70, 9),
    maxY: expect.closeTo(-50, 9),
  });
  const turned = only(
    '<circle r="100" transform="matrix(0.866 0.5 -0.5 0.866 7 7) rotate(30 5 5)"/>',
  ).outline;
  expect(turned.segments.length).toBe(2);
  expect(Math.abs(areaOf('<circle r="100" transform="skewX(30)"/>') / (Math.PI * 10_000) - 1)).toBeLessThan(
    1e-3,
  );
});

test('a transformed path is where svgpath puts it', () => {
  // Oracle: svgpath 2.6.0 applies the same transform and gives curves whose ends lie on the outline.
  const number = fc.integer({ min: -300, max: 300 });
  fc.assert(
    fc.property(
      number,
      number,
      fc.integer({ min: -180, max: 180 }),
      fc.integer({ min: 1, max: 4 }),
      fc.integer({ min: -40, max: 40 }),
      (x, y, angle, scale, skew) => {
        const transform = `translate(${x},${y}) rotate(${angle}) scale(${scale} ${scale + 1}) skewY(${skew})`;
        const data = 'M0 0L120 0A60 40 20 0 1 150 90C150 130 90 160 60 120Q30 100 0 90Z';
        const { outline } = only(`<path transform="${transform}" d="${data}"/>`);
        let worst = 0;
        new SvgPath(data).transform(transform).iterate((segment) => {
          const [, ...n] = segment as unknown as readonly [string, ...number[]];
          if (n.length > 0) worst = Math.max(worst, nearest(outline, point(n.at(-2)!, -n.at(-1)!)).distance);
        });
        return worst < 0.01;
      },
    ),
    { numRuns: 25, seed: 5 },
  );
});

test('what is used is drawn where it is used; what is only defined is not', () => {
  const body =
    '<defs><rect id="r" width="10" height="20"/><symbol id="s" viewBox="0 0 1 1"><circle cx=".5" cy=".5" r=".5"/></symbol></defs><use href="#r" x="100"/><use xlink:href="#s" x="300" y="0" width="50" height="50" id="eye"/>';
  const { outlines } = readFile(svgText(body));
  expect(outlines.map(({ outline }) => bounds(outline).minX)).toEqual([
    expect.closeTo(100, 9),
    expect.closeTo(300, 9),
  ]);
  expect(area(outlines[1]!.outline)).toBeCloseTo(Math.PI * 625, 6);
  expect(refusalOf(svgText('<use href="#none"/>'))).toMatchObject({
    code: 'REFERENCE_MISSING',
    name: '#none',
  });
  expect(refusalOf(svgText('<g id="a"><use href="#b"/></g><g id="b"><use href="#a"/></g>'))).toMatchObject({
    code: 'REFERENCE_CIRCULAR',
  });
  const bomb = Array.from(
    { length: 20 },
    (_, i) => `<g id="n${i}">${`<use href="#n${i + 1}"/>`.repeat(10)}</g>`,
  ).join('');
  expect(
    refusalOf(svgText(`<defs>${bomb}<rect id="n20" width="1" height="1"/></defs><use href="#n0"/>`)),
  ).toMatchObject({ code: 'FILE_TOO_LARGE' });
});

test('hidden things are left out and counted, a style sheet that may hide is told', () => {
  const shown = '<rect width="10" height="10"/>';
  const body = `<style>.a{display:none}</style>${shown}<rect x="20" width="5" height="5" style="fill:red;display:none"/><g visibility="hidden"><rect x="40" width="5" height="5"/></g><text>hello</text>`;
  const { outlines, notes } = readFile(svgText(body));
  expect(outlines.length).toBe(1);
  expect(notes).toEqual([
    { code: 'KIND_LEFT_OUT', kind: 'text', count: 1 },
    { code: 'HIDDEN_LEFT_OUT', count: 2 },
    { code: 'STYLE_SHEET_NOT_READ', line: 1 },
  ]);
});

test('groups are layers, and titles or ids names', () => {
  const { outlines, layers } = readFile(
    svgText(
      '<g id="cut"><path id="p7" d="M0 0H9V9Z"><title>Hatch &amp; door &#x10C;</title></path></g><g class="sew"><circle id="c" cx="50" r="5"/></g>',
    ),
  );
  expect(outlines.map(({ layer, name }) => [layer, name])).toEqual([
    ['cut', 'Hatch & door Č'],
    ['sew', 'c'],
  ]);
  expect(layers).toEqual(['cut', 'sew']);
});

test('a document with its declarations, comments, sections and own entities is read', () => {
  const body =
    '<!-- <rect/> --><g transform="&move;"><desc><![CDATA[ <rect/> ]]></desc><rect width="10" height="10"/></g>';
  const text = `\ufeff<?xml version="1.0" encoding="utf-8"?>\n<!DOCTYPE svg [ <!ENTITY move "translate(70,0)"> ]>\n${svgText(body)}\n<!-- end -->`;
  expect(bounds(readFile(text).outlines[0]!.outline).minX).toBeCloseTo(70, 9);
  const latin = Uint8Array.from(
    [
      ...`<?xml version="1.0" encoding="ISO-8859-1"?>${svgText('<g id="\u00c9"><rect width="9" height="9"/></g>')}`,
    ].map((letter) => letter.charCodeAt(0)),
  );
  expect(readFile(latin).layers).toEqual(['É']);
});

test.each([
  ['<rect width="10" height="10">', { code: 'FILE_UNREADABLE_AT', line: 1, wanted: '</rect>' }],
  ['<g>path d="M0 0H9V9Z"/></g>', { code: 'FILE_UNREADABLE_AT', wanted: 'an element' }],
  ['<rect width=10 />', { code: 'FILE_UNREADABLE_AT', wanted: 'an attribute or >' }],
  ['<rect width="1" width="2"/>', { code: 'FILE_UNREADABLE_AT', wanted: 'one attribute width' }],
  ['<g id="&unknown;"/>', { code: 'FILE_UNREADABLE_AT', wanted: 'an entity that is known' }],
  [
    '\n\n<rect width="NaN" height="1"/>',
    { code: 'NUMBER_UNREADABLE', what: 'width', text: 'NaN', place: { line: 3, entity: 'rect' } },
  ],
  ['<rect width="-5" height="1"/>', { code: 'NUMBER_OUT_OF_RANGE', what: 'width', value: -5 }],
  ['<rect width="1e300" height="1"/>', { code: 'NUMBER_OUT_OF_RANGE', what: 'width' }],
  ['<rect width="3em" height="1"/>', { code: 'NUMBER_UNREADABLE', text: '3em' }],
  ['<path id="p" d="M0 0L10,,10"/>', { code: 'NUMBER_UNREADABLE', what: 'path data', place: { id: 'p' } }],
  ['<path d="M0 0R10 10 20 20 30 30z"/>', { code: 'NUMBER_UNREADABLE', what: 'path data' }],
  ['<polygon points="0 0 1"/>', { code: 'COUNT_WRONG', what: 'points', found: 3 }],
  ['<g transform="spin(3)"/>', { code: 'NUMBER_UNREADABLE', what: 'transform', text: 'spin(3)' }],
  [
    '<g transform="scale(0)"><rect width="1" height="1"/></g>',
    { code: 'NUMBER_OUT_OF_RANGE', what: 'transform' },
  ],
  ['<path d="M0 0H100V100H0V10"/>', { code: 'OUTLINE_OPEN', gap: expect.closeTo(10, 9) }],
  ['<text>nothing drawn</text>', { code: 'NO_OUTLINE' }],
])('%s is refused with its place', (body, refusal) => {
  expect(refusalOf(svgText(body))).toMatchObject(refusal);
});

test('a view box stretched without keeping its shape makes ellipses of circles', () => {
  const attributes = 'width="200mm" height="100mm" viewBox="0 0 100 100" preserveAspectRatio="none"';
  const { outline } = only('<circle cx="50" cy="50" r="50"/>', attributes);
  expect(bounds(outline)).toMatchObject({ width: expect.closeTo(200, 0), height: expect.closeTo(100, 0) });
  const kept = only(
    '<circle cx="50" cy="50" r="50"/>',
    'width="200mm" height="100mm" viewBox="0 0 100 100"',
  ).outline;
  expect(length(kept)).toBeCloseTo(100 * Math.PI, 6);
});

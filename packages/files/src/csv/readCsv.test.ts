import { area, bounds, contains, point } from '@panewright/geometry';
import { mm } from '@panewright/quantity';
import { expect, test } from 'vitest';
import { readFile, refusalOf } from '../testing/read.ts';

const corners = { points: 'corners' } as const;

/** Points every `step` round a rectangle with rounded corners, with a seeded scatter: invented data. */
function roundedPoints(width: number, height: number, radius: number, step: number, scatter: number) {
  const points: [number, number][] = [];
  let seed = 12345;
  const noise = () => {
    let sum = 0;
    for (let k = 0; k < 12; k++) {
      seed = (seed * 1103515245 + 12345) % 2147483648;
      sum += seed / 2147483648;
    }
    return (sum - 6) * scatter;
  };
  const put = (x: number, y: number, nx: number, ny: number) => {
    const off = noise();
    points.push([x + off * nx, y + off * ny]);
  };
  const corners = [
    [width - radius, radius, -90],
    [width - radius, height - radius, 0],
    [radius, height - radius, 90],
    [radius, radius, 180],
  ] as const;
  corners.forEach(([cx, cy, from], k) => {
    for (let a = 0; a < (radius * Math.PI) / 2; a += step) {
      const angle = (from * Math.PI) / 180 + a / radius;
      put(cx + radius * Math.cos(angle), cy + radius * Math.sin(angle), Math.cos(angle), Math.sin(angle));
    }
    const angle = ((from + 90) * Math.PI) / 180;
    const run = (k % 2 === 0 ? height : width) - 2 * radius;
    for (let s = step; s < run; s += step)
      put(
        cx + radius * Math.cos(angle) - s * Math.sin(angle),
        cy + radius * Math.sin(angle) + s * Math.cos(angle),
        Math.cos(angle),
        Math.sin(angle),
      );
  });
  return points;
}

const ring = roundedPoints(600, 400, 50, 8, 0.1);
const table = (head: string, mark: string, decimal = '.') =>
  [head, ...ring.map((p) => p.map((v) => v.toFixed(3).replace('.', decimal)).join(mark))]
    .filter((row) => row !== '')
    .join('\n');

test('points round an opening become lines and tangent arcs, with a covariance', () => {
  const { outlines, unit, format } = readFile(table('x [mm],y [mm]', ','));
  expect([unit, format]).toEqual(['mm', 'csv']);
  const [{ outline, fit }] = outlines as [(typeof outlines)[0]];
  expect(outline.segments.filter(({ kind }) => kind === 'arc').length).toBe(4);
  expect(outline.segments.length).toBe(8);
  expect(Math.abs(area(outline) - (240_000 - (4 - Math.PI) * 2500))).toBeLessThan(60);
  expect(fit!.covariance.length).toBe(fit!.unknowns.length);
  expect(contains(outline, point(300, 200))).toBe('inside');
});

test('semicolons, tabs, blanks, decimal commas and a column of numbers in front are read alike', () => {
  const plain = readFile(table('x,y', ','), { unit: 'mm', points: 'corners' }).outlines[0]!.outline;
  const numbered = [
    'nr;X (mm);Y (mm)',
    ...ring.map(
      ([x, y], i) => `${i + 1};${x.toFixed(3).replace('.', ',')};${y.toFixed(3).replace('.', ',')}`,
    ),
  ].join('\r\n');
  for (const text of [
    table('', ';', ','),
    table('x\ty', '\t'),
    table('', ' '),
    table('', ' ', ','),
    `# unit: mm\n${table('', ',')}`,
    numbered,
  ]) {
    const { outline } = readFile(text, { unit: 'mm', format: 'csv', points: 'corners' }).outlines[0]!;
    expect(outline).toEqual(plain);
  }
});

test('the unit stands in the head or in a comment, else it is asked for', () => {
  expect(refusalOf(table('x,y', ','))).toMatchObject({
    code: 'UNIT_NOT_STATED',
    format: 'csv',
    width: expect.closeTo(600, 0),
  });
  expect(bounds(readFile(table('x_cm,y_cm', ','), corners).outlines[0]!.outline).width).toBeCloseTo(6000, -1);
  expect(readFile(table('x (in),y (in)', ','), corners).unit).toBe('in');
  expect(readFile(`# units = mm\n${table('x,y', ',')}`, corners).unit).toBe('mm');
  expect(refusalOf(table('x [mm],y [in]', ','))).toMatchObject({ code: 'UNIT_NOT_READ' });
});

test('corners are taken as they are, and the first again at the end closes the ring', () => {
  const text = 'x [in],y [in]\n0,0\n24,0\n24,12\n0,12\n0,0\n';
  const { outline } = readFile(text, { points: 'corners' }).outlines[0]!;
  expect(outline.segments.length).toBe(4);
  expect(area(outline)).toBeCloseTo(288 * 25.4 ** 2, 6);
  // As a trace, four points are too few to tell lines from arcs.
  expect(refusalOf(text)).toMatchObject({ code: 'TRACE_TOO_FEW_POINTS', points: 4 });
  const crossed = 'x [mm],y [mm]\n0,0\n10,10\n10,0\n0,10\n';
  expect(refusalOf(crossed, { points: 'corners' })).toMatchObject({ code: 'FILE_OUTLINE_CROSSES_ITSELF' });
});

test.each([
  [
    'x,y\n1,2\n3,oops\n',
    { code: 'NUMBER_UNREADABLE', what: 'y', text: 'oops', place: { line: 3, entity: 'row' } },
  ],
  ['x,y\n1,2\n3\n', { code: 'VALUE_MISSING', what: 'y', place: { line: 3, entity: 'row' } }],
  ['x,y\n1,2\n3,NaN\n', { code: 'NUMBER_UNREADABLE', text: 'NaN' }],
  ['x,y\n1,1e99\n3,4\n', { code: 'NUMBER_OUT_OF_RANGE', what: 'y', value: 1e99 }],
  ['1,2,3\n4,5,6\n', { code: 'COLUMNS_UNCLEAR', line: 1, columns: 3 }],
  ['1,5,2,5\n3,5,4,5\n', { code: 'COMMAS_UNCLEAR', line: 1 }],
  ['1,5;2.5\n3,5;4.5\n', { code: 'COMMAS_UNCLEAR', line: 1 }],
  ['x [mm],y [mm]\n1,2\n', { code: 'POINTS_TOO_FEW', points: 1 }],
  ['\n \n# nothing\n', { code: 'FILE_EMPTY' }],
])('%j is refused with its place', (text, refusal) => {
  expect(refusalOf(text, { format: 'csv' })).toMatchObject(refusal);
});

test('what is asked for out of range is refused', () => {
  for (const told of [{ closeWithin: mm(-1) }, { arcTolerance: mm(0) }, { closeWithin: mm(Number.NaN) }])
    expect(refusalOf('x,y', told)).toMatchObject({ code: 'OPTION_OUT_OF_RANGE' });
});

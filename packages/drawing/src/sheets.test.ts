import { readFileSync } from 'node:fs';
import { defaultCatalogue, deriveShapes, emptyJob, type Job } from '@panewright/design';
import { movePoint } from '@panewright/geometry';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { lengthText } from './figures.ts';
import { type Item, type Sheet, sheetsOf, type TextItem, textClashes } from './index.ts';
import { fittingOrder } from './install/fittingOrder.ts';
import { measuredFrom } from './install/holdTable.ts';
import { inputFor, smallJob, squareOpening } from './testing/jobs.ts';
import { testMetrics } from './testing/metrics.ts';

const textsOf = (items: readonly Item[]): readonly TextItem[] =>
  items.flatMap((item) => (item.kind === 'text' ? [item] : item.kind === 'group' ? textsOf(item.items) : []));
const textsOfSheet = (sheet: Sheet) => sheet.pages.flatMap((page) => textsOf(page.items));
const wordsOf = (sheet: Sheet) =>
  textsOfSheet(sheet)
    .map(({ text }) => text)
    .join(' ');

const small = inputFor(smallJob());
const smallSheets = sheetsOf(small);
const smallSheet = (path: string) => smallSheets.find((one) => one.path === path)!;

const demo = JSON.parse(
  readFileSync(new URL('../../../demo/camper.job.json', import.meta.url), 'utf8'),
) as Job;

/** Names of 40 letters and more everywhere a person may type one. Invented. */
function longNames(): { job: Job; catalogue: typeof defaultCatalogue } {
  const unbroken = 'Wohnzimmerfensterscheibenabdeckungsrahme';
  const spaced = 'Large window in the far corner, leeward s';
  const rename = <T extends { readonly name: string }>(list: readonly T[]) =>
    list.map((one, index) => ({ ...one, name: index % 2 === 0 ? unbroken : spaced }));
  return {
    job: {
      ...demo,
      name: `${unbroken} ${spaced}`,
      customer: { name: unbroken, address: `${spaced}\n${unbroken}`, contact: spaced },
      openings: rename(demo.openings).map((one) => ({ ...one, place: `${unbroken} ${spaced}` })),
    },
    catalogue: {
      ...defaultCatalogue,
      shop: { name: unbroken, address: spaced.repeat(4), contact: unbroken, terms: spaced.repeat(9) },
      fabrics: rename(defaultCatalogue.fabrics).map((one) => ({ ...one, supplier: unbroken })),
      bindings: rename(defaultCatalogue.bindings),
      magnets: rename(defaultCatalogue.magnets),
      wrapFilms: rename(defaultCatalogue.wrapFilms),
      tapes: rename(defaultCatalogue.tapes),
      threads: rename(defaultCatalogue.threads),
    },
  };
}

test('no text of the demo’s sheets touches another, a line or the edge', () => {
  const input = inputFor(demo);
  for (const [paper, units] of [
    ['letter', 'in'],
    ['a4', 'mm'],
  ] as const)
    for (const sheet of sheetsOf({ ...input, options: { ...input.options, paper, units } }))
      expect({ sheet: sheet.path, clashes: textClashes(sheet, testMetrics) }).toEqual({
        sheet: sheet.path,
        clashes: [],
      });
});

test('names of forty letters wrap or shrink and touch nothing', () => {
  const { job, catalogue } = longNames();
  const input = inputFor(job, catalogue, { paper: 'letter', units: 'in' });
  for (const sheet of sheetsOf(input))
    expect({ sheet: sheet.path, clashes: textClashes(sheet, testMetrics) }).toEqual({
      sheet: sheet.path,
      clashes: [],
    });
});

test('a text laid over another, over a line or off the paper is found', () => {
  const text = (x: number, y: number, words: string): TextItem => ({
    ...{ kind: 'text', text: words, at: { x, y } as TextItem['at'], size: 5, face: 'regular' },
    ...{ anchor: 'start', turn: 0, colour: '#000000' },
  });
  const line: Item = {
    ...{ kind: 'path', start: { x: 40, y: 52 } as TextItem['at'], closed: false },
    segments: [{ kind: 'line', to: { x: 120, y: 52 } as TextItem['at'] }],
    line: { weight: 0.2, colour: '#000000' },
  };
  const items = [text(10, 20, 'one'), text(14, 21, 'two'), text(50, 51, 'three'), text(97, 80, 'four')];
  const sheet: Sheet = {
    ...{ path: 'test', title: '', symbols: {} },
    pages: [{ label: '', width: 100, height: 100, items: [...items, line] }],
  };
  expect(textClashes(sheet, testMetrics)).toEqual([
    { page: 1, text: 'one', with: 'two' },
    { page: 1, text: 'three', with: 'line' },
    { page: 1, text: 'four', with: 'edge' },
  ]);
});

test('instructions have capitals of 2.2 mm or more, as a printed book, and the least print 2 mm', () => {
  for (const sheet of smallSheets) {
    const capitals = textsOfSheet(sheet).map(({ size }) => size * testMetrics.capital);
    expect(Math.min(...capitals)).toBeGreaterThan(sheet.path.startsWith('patterns') ? 1.1 : 1.999);
    if (sheet.path !== 'work-order') continue;
    const cut = textsOfSheet(sheet).find(({ text }) => text.startsWith('Cut length'));
    expect(cut!.size * testMetrics.capital).toBeGreaterThan(2.199);
  }
});

test('the work order gives this job’s own figures', () => {
  const input = small;
  const order = smallSheet('work-order');
  const words = wordsOf(order);
  const panel = input.plan.panels[0]!;
  if (panel.edging.kind !== 'binding') throw new Error('the first panel is bound');
  const points = input.plan.hold[0]!.points.length;
  expect(words).toContain('Bind 2 panels: Centrefold binding, woven, 7/8 in');
  expect(words).toContain(`Cut length ${lengthText(panel.edging.cutLength.value, 'mm')} each, 2 lengths.`);
  expect(words).toContain(`Sew on ${2 * points} pockets, ${points} to a panel`);
  expect(words).toContain('Window A; Galley');
  expect(words).toContain('A hot knife on coated mesh gives off acid fumes');
});

test('an exit and a driver’s window are named on the front and on their own page', () => {
  const install = smallSheet('install-sheet');
  const pages = install.pages.map((page) =>
    textsOf(page.items)
      .map(({ text }) => text)
      .join(' '),
  );
  expect(pages[0]).toContain('Marked as emergency exit: Window C.');
  expect(pages.at(-1)).toContain('EMERGENCY EXIT');
  expect(pages.at(-1)).toContain('The driver sees through this window.');
});

test('the two views of an opening mirror each other, and their left distances add up to its width', () => {
  const input = small;
  const install = smallSheet('install-sheet');
  const page = install.pages.at(-1)!;
  const texts = textsOf(page.items);
  const rows = texts.filter(({ text, size }) => /^\d+$/.test(text) && size * testMetrics.capital > 3.1);
  const lines = [...new Set(rows.map(({ at }) => at.y.toFixed(2)))];
  const table = lines
    .map((y) => rows.filter(({ at }) => at.y.toFixed(2) === y))
    .filter((cells) => cells.length === 5)
    .map((cells) => cells.map(({ text }) => Number(text)));
  const width = input.plan.openings.find(({ opening }) => opening === 'C')!.shape!.width.value;
  expect(table.length).toBe(input.plan.hold.find(({ pattern }) => pattern === 'P2')!.points.length);
  for (const [, outside, inside] of table)
    expect(Math.abs(outside! + inside! - width)).toBeLessThanOrEqual(1);
  const labels = (pole: string) => texts.filter(({ text }) => new RegExp(`^\\d+ ${pole}$`).test(text));
  const [outside, inside] = [labels('N'), labels('S')];
  const leftFirst = (all: readonly TextItem[]) =>
    all.toSorted((a, b) => a.at.x - b.at.x).map(({ text }) => text.split(' ')[0]);
  expect(outside.length).toBe(inside.length);
  const corner = (all: readonly TextItem[], number: string) =>
    all.find(({ text }) => text.startsWith(`${number} `))!.at.x;
  const middle = (all: readonly TextItem[]) =>
    (Math.min(...all.map(({ at }) => at.x)) + Math.max(...all.map(({ at }) => at.x))) / 2;
  // Hold point 1 is the bottom left corner seen from outside (design/plan): so it is at the right from inside.
  expect(corner(outside, '1')).toBeLessThan(middle(outside));
  expect(corner(inside, '1')).toBeGreaterThan(middle(inside));
  expect(new Set(leftFirst(outside))).toEqual(new Set(leftFirst(inside)));
});

test('an opening is measured from its squarer side, which is the same side in both views', () => {
  // The demo's left quarter window leans at its right: outside it is measured from the left, inside from the right.
  const { plan } = inputFor(demo);
  const { shape } = plan.openings.find(({ name }) => name === 'Left quarter')!;
  const [outside, inside] = [measuredFrom(shape!, 'outside'), measuredFrom(shape!, 'inside')];
  expect([outside.hand, inside.hand]).toEqual(['left', 'right']);
  expect(inside.across).toEqual(outside.across);
  const square = small.plan.openings[0]!.shape!;
  expect(measuredFrom(square, 'inside').hand).toBe('left');
  expect(measuredFrom(square, 'inside').across).not.toEqual(measuredFrom(square, 'outside').across);
});

test('every hold point has its number on a tile, with its patch, and in both views', () => {
  const { plan } = small;
  for (const { pattern, points } of plan.hold) {
    const tiles = textsOfSheet(smallSheet(`patterns/${pattern}-a4`)).map(({ text }) => text);
    for (const { number, pocketPiece } of points) expect(tiles).toContain(`${number} · ${pocketPiece}`);
  }
  const views = textsOfSheet(smallSheet('install-sheet')).map(({ text }) => text);
  const [first] = plan.hold;
  for (const { number } of first!.points) {
    const { panelOut, insideOut } = first!.openings[0]!.poles;
    for (const pole of [panelOut, insideOut])
      expect(views).toContain(`${number} ${pole === 'north' ? 'N' : 'S'}`);
  }
});

test('a plan without its lay yet has patterns, work order and install sheet', () => {
  const job = smallJob();
  const plan = deriveShapes(job, defaultCatalogue);
  const paths = sheetsOf({ ...small, plan, job }).map(({ path }) => path);
  expect(paths).toEqual(['work-order', 'patterns/P1-a4', 'patterns/P2-a4', 'install-sheet']);
});

test('an opening that cannot be made is named wherever it is missed', () => {
  const job = smallJob();
  const [a, ...rest] = job.openings;
  const { survey } = a!;
  if (survey.method !== 'tape') throw new Error('the small job is taped');
  const lost = {
    ...a!,
    name: 'Skylight',
    survey: { ...survey, readings: survey.readings.slice(0, 1) },
  };
  const input = inputFor({ ...job, openings: [lost, ...rest] });
  const sheets = sheetsOf(input);
  const words = (path: string) => wordsOf(sheets.find((one) => one.path === path)!);
  expect(words('install-sheet')).toContain('No panel yet, see the work order: Skylight.');
  expect(words('quote')).toContain('Not in this quote: Skylight.');
  expect(words('work-order')).toContain('CANNOT BE MADE AS IT STANDS');
});

// Invented: an L, a circle of two arcs, and a sill with an S over it.
const oddOutlines: Readonly<Record<string, readonly (readonly number[])[]>> = {
  L: [
    [800, 0],
    [800, 350],
    [500, 350],
    [500, 600],
    [0, 600],
    [0, 0],
  ],
  O: [
    [250, 0, 1],
    [-250, 0, 1],
  ],
  S: [
    [900, 0],
    [900, 500],
    [450, 500, 0.2],
    [0, 500, -0.2],
    [0, 0],
  ],
};

test.each(Object.entries(oddOutlines))(
  'every sheet of an opening shaped like an %s is set without a clash',
  (id, corners) => {
    const input = inputFor({
      ...emptyJob('odd', 'An odd window', 'mm'),
      openings: [
        {
          ...squareOpening(id, 100, 100, 0),
          survey: {
            method: 'outline',
            segments: corners.map(([x, y, bulge]) => {
              const to = { x: x!, y: y! };
              return bulge === undefined
                ? { kind: 'line', to, sigma: 0.5 }
                : { kind: 'arc', to, bulge, sigma: 0.5 };
            }),
            from: { kind: 'file', name: 'odd.dxf', date: '', note: '' },
          },
        },
      ],
    });
    const sheets = sheetsOf(input);
    expect(sheets.map(({ path }) => path)).toContain('install-sheet');
    for (const sheet of sheets) {
      expect(textClashes(sheet, testMetrics)).toEqual([]);
      expect(wordsOf(sheet)).not.toMatch(/NaN|undefined/);
    }
    const rule = 'held level at the lowest point';
    expect(wordsOf(sheets.find(({ path }) => path === 'install-sheet')!).includes(rule)).toBe(id !== 'S');
  },
);

test('jobs of any size and shape, with long notes, are set without a clash', () => {
  const finishes = [
    { kind: 'hem', width: 20 },
    { kind: 'hotCut' },
    { kind: 'binding', binding: 'centrefold-32' },
  ] as const;
  fc.assert(
    fc.property(
      fc.integer({ min: 80, max: 1600 }),
      fc.integer({ min: 80, max: 900 }),
      fc.double({ min: 0, max: 0.48, noNaN: true }),
      fc.constantFrom(...finishes),
      fc.constantFrom('warpUp' as const, 'warpAcross' as const),
      fc.string({ minLength: 1, maxLength: 60, unit: 'grapheme' }),
      (width, height, roundness, finish, grain, name) => {
        const radius = Math.floor(Math.min(width, height) * roundness);
        const opening = squareOpening('A', width, height, radius, { name, choices: { finish, grain } });
        const input = inputFor({
          ...emptyJob('any', name, 'mm'),
          openings: [opening],
          notes: `${name}\n`.repeat(200),
        });
        for (const sheet of sheetsOf(input)) expect(textClashes(sheet, testMetrics)).toEqual([]);
      },
    ),
    { numRuns: 8, seed: 20261125 },
  );
});

test('a panel is hung from its upper corners first', () => {
  const { plan } = small;
  const hold = plan.hold[1]!;
  const member = plan.patterns[1]!.members[0]!;
  const order = fittingOrder({ member }, hold.points);
  const at = (number: number) =>
    movePoint(member.place, hold.points.find((one) => one.number === number)!.centre);
  const highest = Math.max(...hold.points.map(({ number }) => at(number).y));
  expect(order.toSorted((a, b) => a - b)).toEqual(hold.points.map(({ number }) => number));
  for (const number of order.slice(0, 2)) {
    expect(hold.points.find((one) => one.number === number)!.kind).toBe('corner');
    expect(at(number).y).toBeGreaterThan(highest - 60);
  }
});

test('the buy list counts whole packs and its table adds up to the plan', () => {
  const input = small;
  const list = smallSheet('buy-list');
  const { header, rows } = list.table!;
  const column = (name: string) => header.indexOf(name);
  for (const row of rows) {
    const [used, packs, pack, left] = ['used', 'packs', 'pack quantity', 'left over'].map((name) =>
      Number(row[column(name)]),
    );
    expect(Number.isInteger(packs)).toBe(true);
    // Lengths in the table are to a tenth of a millimetre.
    expect(Math.abs(packs! * pack! - used! - left!)).toBeLessThanOrEqual(0.1 + 1e-9);
    expect(left).toBeGreaterThanOrEqual(-1e-9);
  }
  const cost = rows.reduce((sum, row) => sum + Number(row[column('cost, USD')]), 0);
  expect(Math.round(100 * cost)).toBe(
    input.plan.takeOff!.materials.reduce((sum, one) => sum + one.costBought.value, 0),
  );
});

test('the quote shows a price for each opening and the plan’s total', () => {
  const input = small;
  const words = wordsOf(smallSheet('quote'));
  const money = (minor: number) =>
    new Intl.NumberFormat('en-US', { style: 'currency', currency: 'USD' }).format(minor / 100);
  for (const { price } of input.plan.price!.byOpening) expect(words).toContain(money(price));
  expect(words).toContain(money(input.plan.price!.total.value));
  expect(words).toContain('Valid for 30 days, until 25 Dec 2026.');
});

test('a job with nothing measured still has sheets that say so', () => {
  const sheets = sheetsOf(inputFor(emptyJob('empty', 'Nothing yet', 'in')));
  expect(sheets.map(({ path }) => path)).toEqual([
    'work-order',
    'cut-list',
    'install-sheet',
    'buy-list',
    'costs',
    'quote',
  ]);
  expect(wordsOf(sheets.find(({ path }) => path === 'cut-list')!)).toContain('There is nothing to cut');
});

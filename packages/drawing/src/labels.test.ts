import jsQR from 'jsqr';
import { expect, test } from 'vitest';
import {
  type Item,
  LABEL_STOCKS,
  type LabelOptions,
  labelSheet,
  labelsOn,
  offcutLabels,
  PAPERS,
  type Page,
  type PathItem,
  type Sheet,
  textClashes,
} from './index.ts';
import { inputFor, smallJob } from './testing/jobs.ts';
import { testMetrics } from './testing/metrics.ts';

const job = smallJob();
const input = inputFor(job);
const link: NonNullable<LabelOptions['link']> = ({ job, opening, revision }) =>
  `http://192.168.1.20:4173/jobs/${job}?opening=${encodeURIComponent(opening)}&revision=${revision}`;
const [first] = LABEL_STOCKS;

function made(more: Partial<LabelOptions> = {}, of = input): Sheet {
  const result = labelSheet(of, { kind: 'shelf', stock: first!, link, ...more });
  if (!result.ok) throw new Error(result.refusal.code);
  return result.value;
}

const fills = (items: readonly Item[]): readonly PathItem[] =>
  items.flatMap((item) =>
    item.kind === 'group' ? fills(item.items) : item.kind === 'path' && item.fill ? [item] : [],
  );

/** What a reader sees in a part of a page, at 10 dots a millimetre. Oracle: jsQR 1.4.0. */
function decoded(page: Page, x: number, y: number, width: number, height: number): string | undefined {
  const [wide, high] = [Math.round(width * 10), Math.round(height * 10)];
  const dots = new Uint8ClampedArray(wide * high * 4).fill(255);
  for (const path of fills(page.items)) {
    const xs = path.segments.map(({ to }) => to.x);
    const ys = path.segments.map(({ to }) => to.y);
    const from = [
      Math.round((Math.min(...xs) - x) * 10),
      Math.round((y + height - Math.max(...ys)) * 10),
    ] as const;
    const to = [
      Math.round((Math.max(...xs) - x) * 10),
      Math.round((y + height - Math.min(...ys)) * 10),
    ] as const;
    for (let j = Math.max(0, from[1]); j < Math.min(high, to[1]); j++)
      for (let i = Math.max(0, from[0]); i < Math.min(wide, to[0]); i++)
        dots.fill(0, (j * wide + i) * 4, (j * wide + i) * 4 + 3);
  }
  return jsQR(dots, wide, high)?.data;
}

/** What the label at a place of the stock says to a reader. */
function decodedAt(sheet: Sheet, index: number, stock = first!): string | undefined {
  const column = index % stock.columns;
  const row = Math.floor(index / stock.columns);
  const y = PAPERS[stock.paper].height - stock.margin.top - row * stock.pitch.y - stock.height;
  return decoded(sheet.pages[0]!, stock.margin.left + column * stock.pitch.x, y, stock.width, stock.height);
}

test('each label’s code says job, opening, revision and where the panel is found', () => {
  const sheet = made();
  const read = job.openings.map((_, index) => decodedAt(sheet, index));
  expect(read).toEqual(job.openings.map(({ id }) => link({ job: job.id, opening: id, revision: '1' })));
  const { link: _, ...bare } = { kind: 'shelf' as const, stock: first!, link };
  const plain = labelSheet(input, bare);
  expect(plain.ok && decodedAt(plain.value, 0)).toBe(`${job.id}\nA\n1`);
});

test('every stock fits its paper, and its codes are read on both kinds of label', () => {
  for (const stock of LABEL_STOCKS) {
    const { width, height } = PAPERS[stock.paper];
    const right = stock.margin.left + (stock.columns - 1) * stock.pitch.x + stock.width;
    const foot = stock.margin.top + (stock.rows - 1) * stock.pitch.y + stock.height;
    expect(stock.pitch.x).toBeGreaterThanOrEqual(stock.width);
    expect(stock.pitch.y).toBeGreaterThanOrEqual(stock.height);
    // The outer margins are alike on both sides, as on any sheet that is cut true.
    expect(width - right).toBeCloseTo(stock.margin.left, 0);
    expect(height - foot).toBeGreaterThanOrEqual(0);
    for (const kind of ['shelf', 'sewn'] as const) {
      const short: LabelOptions['link'] = ({ job, opening }) => `http://shop.test/${job}/${opening}`;
      const sheet = made({ kind, stock, link: short });
      expect(decodedAt(sheet, 2, stock)).toBe('http://shop.test/small/C');
      expect({ stock: stock.name, kind, clashes: textClashes(sheet, testMetrics) }).toEqual({
        ...{ stock: stock.name, kind, clashes: [] },
      });
    }
  }
});

test('labels begin where a sheet begun before goes on, and run over to the next', () => {
  const most = labelsOn(first!);
  const sheet = made({ start: most - 1, copies: 2 });
  expect(sheet.pages.length).toBe(2);
  expect(decodedAt(sheet, most - 3)).toBeUndefined();
  expect(decodedAt(sheet, most - 2)).toContain('opening=A');
  expect(decodedAt(sheet, most - 1)).toContain('opening=A');
  expect(decodedAt({ ...sheet, pages: [sheet.pages[1]!] }, 0)).toContain('opening=B');
});

test('long names keep clear of the code and of the label’s edge', () => {
  const name = 'Wohnzimmerfensterscheibenabdeckungsrahme';
  const long = {
    ...job,
    name: name.repeat(2),
    openings: job.openings.map((one) => ({ ...one, name, place: name })),
  };
  const named = inputFor(long);
  for (const stock of LABEL_STOCKS) {
    const sheet = made({ stock, link: () => 'http://shop.test/1', edges: true }, named);
    expect({ stock: stock.name, clashes: textClashes(sheet, testMetrics) }).toEqual({
      stock: stock.name,
      clashes: [],
    });
    expect(decodedAt(sheet, 0, stock)).toBe('http://shop.test/1');
    const codes = fills(sheet.pages[0]!.items).map(({ segments }) =>
      Math.min(...segments.map(({ to }) => to.x)),
    );
    const box = stock.margin.left + stock.width;
    const left = Math.min(...codes.filter((x) => x < box));
    const texts = (items: readonly Item[]): readonly number[] =>
      items.flatMap((item) =>
        item.kind === 'group'
          ? texts(item.items)
          : item.kind === 'text' && item.at.x < box
            ? [item.at.x + testMetrics.width(item.text, item.face) * item.size]
            : [],
      );
    expect(Math.max(...texts(sheet.pages[0]!.items))).toBeLessThan(left);
  }
});

test('what cannot be printed is refused with its numbers', () => {
  const refused = (more: Partial<LabelOptions>) => {
    const result = labelSheet(input, { kind: 'shelf', stock: first!, ...more });
    return result.ok ? undefined : result.refusal;
  };
  expect(refused({ start: 15 })).toEqual({ code: 'LABEL_START_OUT_OF_RANGE', start: 15, most: 14 });
  expect(refused({ start: 1.5 })?.code).toBe('LABEL_START_OUT_OF_RANGE');
  expect(refused({ copies: 0 })).toEqual({ code: 'LABEL_COPIES_OUT_OF_RANGE', copies: 0, most: 50 });
  const small = LABEL_STOCKS.find(({ rows }) => rows === 13)!;
  expect(refused({ stock: small, kind: 'sewn', link: () => 'x'.repeat(300) })).toMatchObject({
    ...{ code: 'LABEL_TOO_SMALL_FOR_CODE', least: 0.33 },
  });
  expect(made({}, inputFor({ ...job, openings: [] })).pages).toEqual([]);
});

test('an offcut’s label says its name, size, cloth, batch, place and date, and its code says it to a reader without a network', () => {
  const offcut = {
    ...{ id: 'offcut1', name: 'Van L1-1', fabric: input.catalogue.fabrics[0]!.id, along: 820, across: 610 },
    ...{ place: 'shelf 2', worth: 940, batch: 'B 17', notes: '' },
    from: { job: 'van', jobName: 'Van', lay: 'L1', date: '2026-11-20' },
  };
  for (const [language, said] of [
    ['en', ['820 × 610 mm (along × across)', 'Batch B 17']],
    ['de', ['820 × 610 mm (längs × quer)', 'Partie B 17']],
    ['es', ['820 × 610 mm (a lo largo × a lo ancho)', 'Lote B 17']],
  ] as const) {
    const options = { units: 'mm', metrics: testMetrics, language } as const;
    const sheet = offcutLabels([offcut, offcut], input.catalogue, options, { stock: first! });
    if (!sheet.ok) throw new Error(sheet.refusal.code);
    const [name, size, cloth, id] = decodedAt(sheet.value, 1)?.split('\n') ?? [];
    expect({ name, size, id }).toEqual({ name: 'Van L1-1', size: said[0], id: 'offcut1' });
    if (language === 'en') expect(cloth).toBe(input.catalogue.fabrics[0]!.name);
    const texts = JSON.stringify(sheet.value.pages[0]!.items);
    for (const part of ['Van L1-1', ...said, 'shelf 2', 'Van, 2026-11-20']) expect(texts).toContain(part);
    expect(textClashes(sheet.value, testMetrics)).toEqual([]);
  }
});

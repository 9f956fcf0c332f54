import { readFileSync } from 'node:fs';
import type { Job } from '@panewright/design';
import { expect, test } from 'vitest';
import {
  checkSheetOptions,
  eachSheet,
  type Paper,
  patternSheet,
  pocketSheet,
  printerTest,
  rollOf,
  type SheetOptions,
  sheetsAtMost,
  sheetsOf,
  textClashes,
} from './index.ts';
import { inputFor, smallJob } from './testing/jobs.ts';
import { testMetrics } from './testing/metrics.ts';

const demo = JSON.parse(
  readFileSync(new URL('../../../demo/camper.job.json', import.meta.url), 'utf8'),
) as Job;
const base = inputFor(demo);
const withOptions = (more: Partial<SheetOptions>) => ({ ...base, options: { ...base.options, ...more } });
const PAPERS: readonly (readonly [Paper, 'mm' | 'in'])[] = [
  ['a3', 'mm'],
  ['tabloid', 'in'],
  [rollOf(24), 'in'],
  [rollOf(36), 'mm'],
  [{ kind: 'roll', width: 1067 }, 'mm'],
  [{ kind: 'roll', width: 200 }, 'mm'],
];

test('patterns, templates and test pages on every paper have no text on text, line or edge', () => {
  for (const [paper, units] of PAPERS)
    for (const correction of [undefined, { x: 1.0123, y: 0.9876 }]) {
      const input = withOptions({ paper, units, ...(correction ? { correction } : {}) });
      const sheets = [
        ...input.plan.patterns.slice(0, 4).map(({ pattern }) => patternSheet(input, pattern)!),
        pocketSheet(input)!,
        printerTest(input),
      ];
      for (const sheet of sheets)
        expect({ paper, sheet: sheet.path, clashes: textClashes(sheet, testMetrics) }).toEqual({
          ...{ paper, sheet: sheet.path, clashes: [] },
        });
    }
});

test('each paper has its own file, and written sheets stay on office paper', () => {
  const input = inputFor(smallJob(), undefined, { paper: rollOf(36), printerTest: true });
  const sheets = sheetsOf(input);
  const paths = sheets.map(({ path }) => path);
  expect(paths).toEqual(expect.arrayContaining(['patterns/P1-roll-36in', 'printer-test-roll-36in', 'quote']));
  const quote = sheets.find(({ path }) => path === 'quote')!;
  expect([quote.pages[0]!.width, quote.pages[0]!.height]).toEqual([210, 297]);
  const pattern = sheets.find(({ path }) => path === 'patterns/P2-roll-36in')!;
  expect(pattern.pages.length).toBe(2);
});

test('a correction is on patterns and templates and on no other sheet, turned with the page', () => {
  const correction = { x: 1.01, y: 0.98 };
  for (const sheet of sheetsOf({ ...withOptions({ paper: 'a4', correction, printerTest: true }) }))
    for (const page of sheet.pages) {
      const expected = !sheet.path.startsWith('patterns/')
        ? undefined
        : page.width > page.height
          ? { x: 0.98, y: 1.01 }
          : correction;
      expect(page.correction).toEqual(expected);
    }
});

test('a roll too narrow and a printer too far out are refused with what would do', () => {
  const check = (more: Partial<SheetOptions>) => checkSheetOptions({ ...base.options, ...more });
  expect(check({ paper: { kind: 'roll', width: 150 } })).toEqual({
    ok: false,
    refusal: { code: 'ROLL_WIDTH_OUT_OF_RANGE', width: 150, least: 200, most: 5080 },
  });
  for (const y of [1.2, Number.NaN])
    expect(check({ correction: { x: 1, y } })).toEqual({
      ok: false,
      refusal: { code: 'CORRECTION_OUT_OF_RANGE', axis: 'y', factor: y, least: 0.97, most: 1.03 },
    });
  expect(check({ paper: 'tabloid', correction: { x: 1.002, y: 1 } }).ok).toBe(true);
  expect(() => sheetsOf(withOptions({ paper: { kind: 'roll', width: 1 } }))).toThrow('not checked');
});

test('sheets come one at a time, the same as all together, and may be stopped', () => {
  const input = inputFor(smallJob());
  const paths = sheetsOf(input).map(({ path }) => path);
  expect([...eachSheet(input)].map(({ path }) => path)).toEqual(paths);
  expect(sheetsAtMost(input)).toBeGreaterThanOrEqual(paths.length);
  const seen: string[] = [];
  for (const { path } of eachSheet(input)) {
    seen.push(path);
    if (seen.length === 2) break;
  }
  expect(seen).toEqual(paths.slice(0, 2));
});

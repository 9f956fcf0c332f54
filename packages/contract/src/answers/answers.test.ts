import {
  type Finding,
  type FindingCode,
  type Issue,
  inOne,
  makeShow,
  messagesOf,
  NOT_GIVEN,
  type Refusal,
  sayFinding,
  sayRefusal,
} from '@panewright/contract';
import { expect, test } from 'vitest';
import { refusalSamples } from './samples.ts';

const inches = makeShow({ units: 'in', openings: { W1: 'Galley', W2: 'Bed' } });
const millimetres = makeShow({ units: 'mm', openings: { W1: 'Galley', W2: 'Bed' } });

test.each(Object.values(refusalSamples) as Refusal[])('$code is said in whole sentences', (refusal) => {
  const text = inOne(sayRefusal(refusal, inches));
  expect(text).toMatch(/^[A-Z“].*\.$/s);
  expect(text).not.toMatch(/undefined|NaN|\[object/);
  expect(text).not.toContain(NOT_GIVEN);
});

const finding = <C extends FindingCode>(
  code: C,
  where: Finding['where'],
  numbers: Finding<C>['numbers'],
): Finding => ({ severity: 'doubt', code, where, numbers }) as Finding;

test('lengths are said in the units of the job, to 1/16 in or 0.1 mm', () => {
  const wide = finding(
    'PIECE_WIDER_THAN_ROLL',
    { item: 'mesh' },
    { piece: 'P1', leastWidth: 1500, usableWidth: 1359.6, fabric: 'Mesh' },
  );
  expect(sayFinding(wide, inches).what).toBe(
    'Piece P1 needs 59 1/16 in across the roll; Mesh leaves 53 1/2 in.',
  );
  expect(sayFinding(wide, millimetres).what).toBe(
    'Piece P1 needs 1500.0 mm across the roll; Mesh leaves 1359.6 mm.',
  );
});

test('where less or as much cloth of a dearer roll is bought, no length is said to be more', () => {
  for (const code of ['SAME_WAY_COSTS', 'KEPT_TOGETHER_COSTS'] as const)
    for (const [length, bought] of [
      [914.4, '914.4 mm more cloth is bought'],
      [0, 'cloth of a dearer roll is bought'],
      [-914.4, 'cloth of a dearer roll is bought'],
    ] as const) {
      const costs = finding(code, {}, { fabric: 'Mesh', price: 360, length });
      expect(sayFinding(costs, millimetres).what).toContain(bought);
    }
});

test('wind is said in miles an hour where the job is in inches, and in metres a second where it is not', () => {
  // Oracle: 1 mph = 0.44704 m/s exactly, so 8.9408 m/s are 20 mph.
  const weak = finding(
    'PULL_TOO_WEAK',
    { opening: 'W1' },
    { margin: 0.8, asked: 1.5, pull: 3.21, count: 6, letsGoAt: 4.4704, wind: 8.9408, mode: 'slip' },
  );
  expect(sayFinding(weak, inches).what).toContain('a wind of 20 mph');
  expect(sayFinding(weak, inches).why).toContain('about 10 mph');
  expect(sayFinding(weak, millimetres).what).toContain('a wind of 8.9 m/s');
});

test('openings are called by their names, and by their ids where they have none', () => {
  const shared = finding(
    'SHARED_PATTERN',
    { pattern: 'P1' },
    { asIs: 'W1 W9', turnedOver: 'W2', deviation: 0.4 },
  );
  expect(sayFinding(shared, inches).what).toBe('Pattern P1 serves Galley and W9 and, turned over, Bed.');
});

test('a misread reading is named with what it was, what would fit, and the slip it may be', () => {
  const numbers = {
    of: 'rising',
    entered: '36 1/16',
    corrected: 890.6,
    error: 25.4,
    cause: 'oneInch',
    confidence: 0.97,
  };
  const {
    what,
    why,
    do: doThis,
  } = sayFinding(finding('READING_SUSPECT', { opening: 'W1' }, numbers), inches);
  expect(what).toContain('the diagonal from bottom left to top right, read as 36 1/16, does not fit');
  expect(what).toContain('35 1/16 in would');
  expect(why).toBe('Perhaps read one inch off (confidence 97 %, an estimate).');
  expect(doThis).toContain('Measure the diagonal');
});

test.each<[Issue, string]>([
  [
    { kind: 'missing', path: ['openings', 2, 'survey', 'readings', 0, 'entered'] },
    '“openings[2].survey.readings[0].entered” is missing.',
  ],
  [
    { kind: 'unknownKey', path: [], key: 'colour' },
    'The document has a key “colour” that is not known; it may be misspelt.',
  ],
  [{ kind: 'tooLow', path: ['a'], least: 0, including: false, found: 0 }, '“a” must be above 0; it is 0.'],
  [
    { kind: 'tooHigh', path: ['a'], most: 0.1 + 0.2, including: true, found: 1 },
    '“a” must be 0.3 or less; it is 1.',
  ],
  [{ kind: 'notOneOf', path: ['units'], options: ['in', 'mm'] }, '“units” must be “in” or “mm”.'],
  [
    { kind: 'pattern', path: ['currency', 'code'], pattern: '^[A-Z]{3}$' },
    '“currency.code” must be a currency code of three capitals.',
  ],
])('an issue is said with its place: %j', (issue, sentence) => {
  const word = messagesOf.en.issues[issue.kind] as (issue: Issue, show: typeof inches) => string;
  expect(word(issue, inches)).toBe(sentence);
});

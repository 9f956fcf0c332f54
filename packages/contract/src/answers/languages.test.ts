import {
  callOperation,
  exampleJob,
  type Finding,
  type FindingCode,
  findingWords,
  languageOf,
  makeShow,
  messagesOf,
  type Refusal,
  type Show,
  sayRefusal,
} from '@panewright/contract';
import { expect, test } from 'vitest';
import { refusalSamples } from './samples.ts';

const asIs = (value: unknown) => String(value ?? '');
const show: Show = {
  ...{ length: asIs, fine: asIs, number: asIs, force: asIs, speed: asIs, percent: asIs, money: asIs },
  ...{ text: asIs, opening: asIs, openings: asIs },
};
/** A number or a name stands as ‹its key›, so that a sentence tells which it uses. */
const placeholders = new Proxy({}, { get: (_, key) => `‹${String(key)}›` });
const codes = Object.keys(findingWords.en) as FindingCode[];

function said(language: 'en' | 'de' | 'es', code: FindingCode) {
  const word = findingWords[language][code] as unknown as (
    finding: unknown,
    show: Show,
  ) => Record<string, string>;
  return word({ severity: 'note', code, where: placeholders, numbers: placeholders }, show);
}
const used = (text: string) => [...new Set(text.match(/‹\w+›/g))].sort();

test.each(['de', 'es'] as const)(
  'every finding is said in %s with the same numbers, part by part',
  (language) => {
    for (const code of codes) {
      const [own, english] = [said(language, code), said('en', code)];
      for (const part of ['what', 'why', 'do']) {
        expect(used(own[part]!), `${code}, ${part}`).toEqual(used(english[part]!));
        expect(own[part] === '', `${code}, ${part}`).toBe(english[part] === '');
      }
      expect(own.what, code).not.toBe(english.what);
      expect(Object.values(own).join(' ').replace(/‹\w+›/g, ''), code).not.toMatch(
        /\b(the|and|of|is|with)\b/i,
      );
      for (const text of Object.values(own).filter(Boolean)) expect(text).toMatch(/[.?]$/);
    }
  },
);

// Decimal comma and no point for thousands: common practice, no source.
test('figures have the decimal sign of the language, fractions of an inch have none', () => {
  const metric = makeShow({ units: 'mm', language: 'de' });
  expect(metric.length(1359.6)).toBe('1359,6 mm');
  expect(metric.force(3.21)).toBe('3,2 N');
  expect(makeShow({ units: 'mm', language: 'es' }).number(0.75, 2)).toBe('0,75');
  expect(makeShow({ units: 'in', language: 'de' }).length(1500)).toBe('59 1/16 in');
  expect(makeShow({ units: 'mm' }).length(1359.6)).toBe('1359.6 mm');
});

test('the last of several openings is joined in the language', () => {
  const openings = { A: 'Bug', B: 'Heck' };
  expect(makeShow({ units: 'mm', language: 'de', openings }).openings('A B')).toBe('Bug und Heck');
  expect(makeShow({ units: 'mm', language: 'es', openings }).openings('A B')).toBe('Bug y Heck');
});

test('a finding with real numbers reads as a sentence in German', () => {
  const weak: Finding<'PULL_TOO_WEAK'> = {
    ...{ severity: 'doubt', code: 'PULL_TOO_WEAK', where: { opening: 'A' } },
    numbers: { margin: 0.8, asked: 1.5, pull: 3.21, count: 6, letsGoAt: 4.5, wind: 8.9, mode: 'slip' },
  } as Finding<'PULL_TOO_WEAK'>;
  const word = findingWords.de.PULL_TOO_WEAK;
  expect(word(weak, makeShow({ units: 'mm', language: 'de', openings: { A: 'Bug' } })).what).toBe(
    'Öffnung Bug: 6 Haltepunkte von je mindestens 3,2 N halten 0,8 mal, was ein Wind von 8,9 m/s verlangt; gefordert ist 1,5 mal (Schätzung).',
  );
});

// A number is told in every language, whichever way its decimals are set apart; names in quotes stand as they are.
const figures = (text: string) =>
  (text.match(/\d+([.,]\d+)?/g) ?? []).map((one) => one.replace(',', '.')).sort();

test.each(['de', 'es'] as const)('every refusal is said in %s with the same numbers', (language) => {
  const messages = messagesOf[language];
  const [own, english] = [makeShow({ units: 'mm', language }), makeShow({ units: 'mm' })];
  for (const refusal of Object.values(refusalSamples) as Refusal[]) {
    const said = sayRefusal(refusal, own, messages);
    const before = sayRefusal(refusal, english);
    for (const part of ['what', 'why', 'do'] as const) {
      expect(figures(said[part]), `${refusal.code}, ${part}`).toEqual(figures(before[part]));
      expect(said[part] === '', `${refusal.code}, ${part}`).toBe(before[part] === '');
    }
    expect(said.what, refusal.code).not.toBe(before.what);
    expect(Object.values(said).join(' '), refusal.code).not.toMatch(/\b(the|and|of|is|with)\b/i);
    for (const text of Object.values(said).filter(Boolean)) expect(text).toMatch(/[.?]$/);
  }
});

// Lists and weights: RFC 9110, 12.4.2 and 12.5.4.
test.each([
  [undefined, 'en'],
  ['de', 'de'],
  ['es-MX, en;q=0.5', 'es'],
  ['fr, en;q=0.3, de-AT;q=0.8', 'de'],
  ['de;q=0, es;q=0.1', 'es'],
  ['fr, *;q=0.5', 'en'],
] as const)('“%s” asks for %s', (header, language) => {
  expect(languageOf(header)).toBe(language);
});

test('an operation says its findings in the language it is asked in', async () => {
  const answer = await callOperation('check', { job: exampleJob }, { messages: messagesOf.de });
  const { findings } = (answer as { value: { findings: { text: string }[] } }).value;
  const text = findings.map((one) => one.text).join(' ');
  expect(text).toContain('Öffnung');
  expect(text).not.toMatch(/\b(the|and|of|is|with)\b/);
});

import { demoJob, type Job } from '@panewright/contract';
import { produce } from 'immer';
import { expect, test } from 'vitest';
import { setReading } from '../openings/readingEdits.ts';
import { documentText, fingerprint } from './documentText.ts';

// Oracle: JSON.stringify and JSON.parse of the language.
test('the text of a document is its JSON, before an edit and after, and what is undefined is left out', () => {
  expect(documentText(demoJob)).toBe(JSON.stringify(demoJob));
  const edited = produce(demoJob, (draft) => setReading(draft as never, 'W3', 'bottom', 0, '25 "1/4"'));
  expect(documentText(edited)).toBe(JSON.stringify(edited));
  const odd = Object.freeze({ a: undefined, b: [Object.freeze({ c: undefined, d: 1 }), null, 'x'], e: [] });
  expect(documentText(odd)).toBe(JSON.stringify(odd));
});

test('a document is known again whatever the order of its keys, and told from one that differs in one entry', () => {
  const backwards = (value: unknown): unknown =>
    typeof value !== 'object' || value === null
      ? value
      : Array.isArray(value)
        ? value.map(backwards)
        : Object.fromEntries(
            Object.entries(value)
              .reverse()
              .map(([key, one]) => [key, backwards(one)]),
          );
  const frozen = produce(demoJob, (draft) => setReading(draft as never, 'W3', 'bottom', 0, '25 1/4')) as Job;
  expect(fingerprint(backwards(frozen) as object)).toBe(fingerprint(frozen));
  expect(fingerprint(JSON.parse(JSON.stringify(frozen)))).toBe(fingerprint(frozen));
  expect(fingerprint(demoJob)).not.toBe(fingerprint(frozen));
  const turned = { ...frozen, openings: frozen.openings.toReversed() };
  expect(fingerprint(turned)).not.toBe(fingerprint(frozen));
});

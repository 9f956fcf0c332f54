import { demoJob, type Job } from '@panewright/contract';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { setReading } from '../openings/readingEdits.ts';
import { tapeIn } from '../survey/surveyOf.ts';
import { checkJob } from './checks.ts';
import { createDocumentStore } from './documentStore.ts';

const open = () => createDocumentStore<Job>(demoJob, 1, checkJob);
const type = (store: ReturnType<typeof open>, opening: string, of: 'bottom' | 'top', text: string) =>
  store.edit(`reading.${opening}.${of}`, (draft) => setReading(draft, opening, of, 0, text));
const bottom = (store: ReturnType<typeof open>) =>
  tapeIn(store.store.getState().document.openings[0]!).readings.find((one) => one.of === 'bottom')?.entered;

test('one entry typed key by key is one step of undo', () => {
  const store = open();
  for (const text of ['2', '25', '25 1/4']) expect(type(store, 'W1', 'bottom', text)).toBeNull();
  expect(bottom(store)).toBe('25 1/4');
  store.undo();
  expect(bottom(store)).toBe('24');
  store.redo();
  expect(bottom(store)).toBe('25 1/4');
});

test('an entry left and typed in again is a second step', () => {
  const store = open();
  type(store, 'W1', 'bottom', '25');
  store.settle();
  type(store, 'W1', 'bottom', '26');
  store.undo();
  expect(bottom(store)).toBe('25');
});

test('a text that is no length changes nothing, and its sentence names it', () => {
  const store = open();
  const before = store.store.getState().document;
  const problem = type(store, 'W1', 'bottom', '24 3/');
  expect(problem?.sentence).toContain('“24 3/” is not a length');
  expect(store.store.getState().document).toBe(before);
  expect(store.store.getState().history.done).toEqual([]);
});

test('a length over the bound is refused with the bound in its numbers', () => {
  const store = open();
  const problem = store.edit('pocket', (draft) => {
    draft.choices.hold.pocket = 5;
  });
  expect(problem?.issue).toMatchObject({ kind: 'tooLow', least: 20, found: 5 });
});

test('taking the other revision keeps one’s own work one undo away', () => {
  const store = open();
  type(store, 'W1', 'bottom', '25');
  store.replace({ ...demoJob, notes: 'from elsewhere' }, 9);
  expect(store.store.getState()).toMatchObject({ revision: 9, save: { kind: 'saved' } });
  store.undo();
  expect(bottom(store)).toBe('25');
  expect(store.store.getState()).toMatchObject({ revision: 9, save: { kind: 'waiting' } });
});

test('however steps are made, undoing all gives the first document, and doing all again the last', () => {
  const step = fc.tuple(
    fc.constantFrom('W1', 'W2', 'W3'),
    fc.constantFrom('bottom' as const, 'top' as const),
    fc.constantFrom('', '20', '21 1/2', 'x', '22'),
    fc.constantFrom('type', 'leave', 'undo', 'redo'),
  );
  fc.assert(
    fc.property(fc.array(step, { maxLength: 25 }), (steps) => {
      const store = open();
      for (const [opening, of, text, act] of steps) {
        if (act === 'undo') store.undo();
        else if (act === 'redo') store.redo();
        else type(store, opening, of, text);
        if (act === 'leave') store.settle();
      }
      while (store.store.getState().history.undone.length > 0) store.redo();
      const last = store.store.getState().document;
      while (store.store.getState().history.done.length > 0) store.undo();
      expect(store.store.getState().document).toEqual(demoJob);
      while (store.store.getState().history.undone.length > 0) store.redo();
      expect(store.store.getState().document).toEqual(last);
    }),
    { numRuns: 30 },
  );
});

import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { type SaveAnswer, startAutosave } from './autosave.ts';
import { createDocumentStore } from './documentStore.ts';

interface Note {
  readonly text: string;
}

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

/** A server that keeps revisions as the contract says, and can be made to fail or to wait. */
function bench() {
  const kept: Note[] = [{ text: 'first' }];
  let down = false;
  let lost = false;
  let gate: Promise<void> = Promise.resolve();
  const local = { now: null as { document: Note; basedOn: number | undefined } | null };
  const document = createDocumentStore<Note>(kept[0]!, 1, () => null);
  const save = startAutosave(document, {
    put: async (next, basedOn): Promise<SaveAnswer> => {
      await gate;
      if (down) throw new Error('no answer');
      if (basedOn !== kept.length) return { kind: 'conflict', theirs: kept.length };
      kept.push(next);
      if (lost) {
        lost = false;
        throw new Error('the answer did not come');
      }
      return { kind: 'saved', revision: kept.length };
    },
    base: { document: kept[0]!, revision: 1 },
    newest: async () => {
      if (down) throw new Error('no answer');
      return { document: kept.at(-1)!, revision: kept.length };
    },
    keeper: {
      keep: async (one, { base }) => {
        local.now = { document: one, basedOn: base?.revision };
      },
      drop: async () => {
        local.now = null;
      },
    },
    noAnswer: 'no answer',
  });
  const write = (text: string) => document.edit('text', (draft) => void (draft.text = text));
  return {
    kept,
    local,
    document,
    save,
    write,
    fail: (value: boolean) => {
      down = value;
    },
    loseAnswer: () => {
      lost = true;
    },
    hold: () => {
      let open = () => {};
      gate = new Promise((resolve) => {
        open = resolve;
      });
      return open;
    },
    state: () => document.store.getState(),
  };
}

test('keys in quick succession are saved once, as the newest revision', async () => {
  const b = bench();
  for (const text of ['a', 'ab', 'abc']) b.write(text);
  expect(b.local.now).toEqual({ document: { text: 'abc' }, basedOn: 1 });
  await vi.advanceTimersByTimeAsync(600);
  expect(b.kept).toEqual([{ text: 'first' }, { text: 'abc' }]);
  expect(b.state()).toMatchObject({ revision: 2, save: { kind: 'saved' } });
  expect(b.local.now).toBeNull();
});

test('what is typed while a save is on its way is saved on top of it', async () => {
  const b = bench();
  const open = b.hold();
  b.write('one');
  await vi.advanceTimersByTimeAsync(600);
  b.write('two');
  expect(b.state().save.kind).not.toBe('saved');
  open();
  await vi.advanceTimersByTimeAsync(600);
  expect(b.kept.map((one) => one.text)).toEqual(['first', 'one', 'two']);
  expect(b.state()).toMatchObject({ revision: 3, save: { kind: 'saved' } });
});

test('without a server the work stays in the browser, and is saved when it answers', async () => {
  const b = bench();
  b.fail(true);
  b.write('kept');
  await vi.advanceTimersByTimeAsync(600);
  expect(b.state().save).toEqual({ kind: 'away', why: 'no answer' });
  expect(b.state().kept).toBe('yes');
  expect(b.local.now?.document.text).toBe('kept');
  b.fail(false);
  await vi.advanceTimersByTimeAsync(3500);
  expect(b.kept.at(-1)).toEqual({ text: 'kept' });
  expect(b.state().save.kind).toBe('saved');
});

test('a save from elsewhere is not overwritten before a person has picked', async () => {
  const b = bench();
  b.kept.push({ text: 'theirs' });
  b.write('mine');
  await vi.advanceTimersByTimeAsync(10_000);
  expect(b.state().save).toEqual({ kind: 'conflict', theirs: 2 });
  b.write('mine, more');
  await vi.advanceTimersByTimeAsync(10_000);
  expect(b.kept.map((one) => one.text)).toEqual(['first', 'theirs']);
  expect(b.local.now).toEqual({ document: { text: 'mine, more' }, basedOn: 1 });
  expect(b.save.resolve({})).toBe(false);
  expect(b.save.together({})?.conflicts).toEqual([
    { path: ['text'], base: 'first', mine: 'mine, more', theirs: 'theirs' },
  ]);
  expect(b.save.resolve({ text: 'mine' })).toBe(true);
  await vi.advanceTimersByTimeAsync(1);
  expect(b.kept.map((one) => one.text)).toEqual(['first', 'theirs', 'mine, more']);
  expect(b.state()).toMatchObject({ revision: 3, save: { kind: 'saved' } });
});

test('picking the other side loses nothing: undo brings one’s own back', async () => {
  const b = bench();
  b.kept.push({ text: 'theirs' });
  b.write('mine');
  await vi.advanceTimersByTimeAsync(1000);
  b.save.resolve({ text: 'theirs' });
  await vi.advanceTimersByTimeAsync(10_000);
  expect(b.kept.at(-1)).toEqual({ text: 'theirs' });
  expect(b.state()).toMatchObject({ save: { kind: 'saved' }, document: { text: 'theirs' } });
  expect(b.local.now).toBeNull();
  b.document.undo();
  expect(b.state().document.text).toBe('mine');
});

test('a save whose answer was lost on the way is not taken for another’s', async () => {
  const b = bench();
  const open = b.hold();
  b.write('one');
  await vi.advanceTimersByTimeAsync(600);
  b.loseAnswer();
  b.write('two');
  open();
  await vi.advanceTimersByTimeAsync(10_000);
  expect(b.kept.map((one) => one.text)).toEqual(['first', 'one', 'two']);
  expect(b.state()).toMatchObject({ revision: 3, save: { kind: 'saved' }, document: { text: 'two' } });
});

test('flush saves what waits at once', async () => {
  const b = bench();
  b.write('now');
  await b.save.flush();
  expect(b.kept.at(-1)).toEqual({ text: 'now' });
});

import { demoJob, type Job } from '@panewright/contract';
import { produce } from 'immer';
import { expect, test } from 'vitest';
import { setReading } from '../openings/readingEdits.ts';
import { checkJob } from './checks.ts';
import { createDocumentStore } from './documentStore.ts';

// Oracle: the check of the whole document, which the server makes too.
test('reading only what an edit changed finds what reading all of it finds', () => {
  const edits: readonly ((draft: Job) => void)[] = [
    (draft) => setReading(draft, 'W3', 'top', 0, '24 1/'),
    (draft) => setReading(draft, 'W3', 'top', 0, '24 1/2'),
    (draft) => void Object.assign(draft, { name: '' }),
    (draft) => void Object.assign(draft.openings[2]!, { id: 'W1' }),
    (draft) => void Object.assign(draft.choices.hold, { pocket: 5 }),
  ];
  for (const edit of edits) {
    const next = produce(demoJob, (draft) => void edit(draft as Job));
    expect(checkJob(next, demoJob)?.sentence).toBe(checkJob(next)?.sentence);
  }
});

test('what was edited before the checks came is checked then, and only what fails is taken back', async () => {
  let come: (check: typeof checkJob) => void = () => {};
  const store = createDocumentStore<Job>(demoJob, 1, new Promise((then) => (come = then)));
  store.edit('notes', (draft) => void (draft.notes = 'kept'));
  store.edit('pocket', (draft) => void (draft.choices.hold.pocket = 5));
  come(checkJob);
  await Promise.resolve();
  await Promise.resolve();
  const { document, refused } = store.store.getState();
  expect(document.notes).toBe('kept');
  expect(document.choices.hold.pocket).toBe(demoJob.choices.hold.pocket);
  expect(refused.pocket?.sentence).toContain('20');
});

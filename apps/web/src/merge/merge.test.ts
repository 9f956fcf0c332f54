import { demoJob, type Job } from '@panewright/contract';
import fc from 'fast-check';
import { produce } from 'immer';
import { expect, test } from 'vitest';
import { setReading } from '../openings/readingEdits.ts';
import { changesBetween, merge, pathKey } from './merge.ts';

const edited = (recipe: (draft: Job) => void): Job =>
  produce(demoJob, (draft) => void recipe(draft as Job)) as Job;
const reading = (job: Job, opening: string, of: string) => {
  const survey = job.openings.find(({ id }) => id === opening)!.survey;
  return survey.method === 'tape' ? survey.readings.find((one) => one.of === of)?.entered : undefined;
};

test('readings of one opening taken on two devices are both kept, and what came from the other is told', () => {
  const mine = edited((draft) => setReading(draft, 'W3', 'bottom', 0, '25 1/4'));
  const theirs = edited((draft) => setReading(draft, 'W3', 'top', 0, '25 1/8'));
  const { document, taken, conflicts } = merge(demoJob, mine, theirs);
  expect(conflicts).toEqual([]);
  expect(reading(document, 'W3', 'bottom')).toBe('25 1/4');
  expect(reading(document, 'W3', 'top')).toBe('25 1/8');
  expect(taken.map(({ path }) => pathKey(path))).toEqual([
    'openings › W3 › survey › readings › top › entered',
  ]);
});

test('one reading taken on both is a conflict with all three values, and is what the person picks', () => {
  const mine = edited((draft) => setReading(draft, 'W3', 'bottom', 0, '25 1/4'));
  const theirs = edited((draft) => setReading(draft, 'W3', 'bottom', 0, '25 1/2'));
  const first = merge(demoJob, mine, theirs);
  expect(first.conflicts).toEqual([
    expect.objectContaining({ mine: '25 1/4', theirs: '25 1/2', base: reading(demoJob, 'W3', 'bottom') }),
  ]);
  const key = pathKey(first.conflicts[0]!.path);
  for (const [pick, value] of [
    ['mine', '25 1/4'],
    ['theirs', '25 1/2'],
  ] as const) {
    const picked = merge(demoJob, mine, theirs, { [key]: pick });
    expect(picked.conflicts).toEqual([]);
    expect(reading(picked.document, 'W3', 'bottom')).toBe(value);
  }
});

test('openings added on both sides are all there, also where one was removed and the row was turned round', () => {
  const mine = edited((draft) => {
    draft.openings.splice(1, 1);
    draft.openings.push({ ...draft.openings[0]!, id: 'A1', name: 'mine' });
  });
  const theirs = edited((draft) => {
    draft.openings.reverse();
    draft.openings.unshift({ ...draft.openings[0]!, id: 'B1', name: 'theirs' });
  });
  const { document, conflicts } = merge(demoJob, mine, theirs);
  expect(conflicts).toEqual([]);
  const ids = document.openings.map(({ id }) => id);
  expect(ids).toContain('A1');
  expect(ids[0]).toBe('B1');
  expect(ids).not.toContain('W2');
  expect(ids.filter((id) => id.startsWith('W'))).toEqual(
    demoJob.openings
      .map(({ id }) => id)
      .filter((id) => id !== 'W2')
      .reverse(),
  );
});

test('an opening removed on one side and measured anew on the other is asked about, not dropped', () => {
  const mine = edited((draft) => void draft.openings.splice(2, 1));
  const theirs = edited((draft) => setReading(draft, 'W3', 'bottom', 0, '25 1/4'));
  const { conflicts } = merge(demoJob, mine, theirs);
  expect(conflicts.map(({ path }) => pathKey(path))).toEqual(['openings › W3']);
  expect(conflicts[0]!.mine).toBeUndefined();
});

// Oracle: the laws of a three-way merge. With nobody on the other side it is one's own version; the sides may be swapped
// where nothing conflicts; every leaf of the result is a leaf of one of the three.
const leaf = fc.constantFrom('a', 'b', 'c', undefined);
const shelf = fc.dictionary(
  fc.constantFrom('x', 'y', 'z'),
  leaf.map((value) => value ?? 'none'),
);
const list = fc.uniqueArray(
  fc.record({ id: fc.constantFrom('1', '2', '3', '4'), v: fc.constantFrom('p', 'q') }),
  {
    selector: ({ id }) => id,
  },
);
const document = fc.record({ name: fc.constantFrom('n', 'm', 'o'), shelf, list });

test('merging obeys its laws', () => {
  fc.assert(
    fc.property(document, document, document, (base, mine, theirs) => {
      expect(merge(base, mine, base)).toEqual({ document: mine, taken: [], conflicts: [] });
      expect(merge(base, base, theirs).document).toEqual(theirs);
      const [one, other] = [merge(base, mine, theirs), merge(base, theirs, mine)];
      expect(one.conflicts.length).toBe(other.conflicts.length);
      const bare = ({ list: entries, ...rest }: typeof base) => ({
        ...rest,
        list: entries.toSorted((a, b) => (a.id < b.id ? -1 : 1)),
      });
      if (one.conflicts.length === 0) expect(bare(one.document)).toEqual(bare(other.document));
      expect(changesBetween(base, base)).toEqual([]);
    }),
    { numRuns: 400 },
  );
});

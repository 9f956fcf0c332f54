import { defaultCatalogue, demoJob, deriveShapes } from '@panewright/contract';
import { expect, test } from 'vitest';
import { matches, searchJob } from './searchJob.ts';

const { patterns } = deriveShapes({ ...demoJob, openings: demoJob.openings.slice(0, 3) }, defaultCatalogue);
const labels = (query: string) =>
  searchJob(query, demoJob, { catalogue: defaultCatalogue, patterns }).map(
    ({ kind, label }) => `${kind} ${label}`,
  );

test('every word has to be there, in any order, small or large, with accents or without', () => {
  expect(matches('wind BOAT', ['Six windows for a boat'])).toBe(true);
  expect(matches('boat seven', ['Six windows for a boat'])).toBe(false);
  expect(matches('cafe', ['Café'])).toBe(true);
  expect(matches('  ', ['anything'])).toBe(false);
});

test('openings are found by number, name and place, patterns by name, materials by name', () => {
  const third = demoJob.openings[2]!;
  expect(labels('w3')).toContain(`opening W3 ${third.name}`);
  expect(labels(third.name)).toContain(`opening W3 ${third.name}`);
  expect(labels('P1')).toContain('pattern P1');
  const cloth = defaultCatalogue.fabrics.find(({ id }) => id === demoJob.choices.fabric)!;
  expect(labels(cloth.name)).toContain(`material ${cloth.name}`);
  expect(labels('no such thing')).toEqual([]);
});

import {
  catalogue,
  defaultCatalogue,
  isUnbroken,
  job,
  type MigrationChain,
  migrate,
  migrationChains,
  newestVersion,
} from '@panewright/design';
import { expect, test } from 'vitest';

test.each(Object.entries(migrationChains))(
  'the steps of a %s lead from version 1 on without a gap',
  (_, chain) => {
    expect(isUnbroken(chain)).toBe(true);
  },
);

// An invented chain: version 2 renamed a key, version 3 split it.
const chain: MigrationChain = {
  format: 'invented',
  steps: [
    { from: 1, migrate: ({ title, ...rest }) => ({ ...rest, name: title }) },
    { from: 2, migrate: ({ name, ...rest }) => ({ ...rest, names: [name] }) },
  ],
};

test('a document of each version comes out as the newest', () => {
  const newest = { format: 'invented', version: 3, names: ['a'] };
  expect(newestVersion(chain)).toBe(3);
  for (const old of [
    { format: 'invented', version: 1, title: 'a' },
    { format: 'invented', version: 2, name: 'a' },
    newest,
  ])
    expect(migrate('job', old, chain)).toEqual({ ok: true, value: newest });
});

test('a chain with a step left out is seen as broken', () => {
  expect(isUnbroken({ ...chain, steps: [chain.steps[1]!] })).toBe(false);
});

test('a job of a version not yet known is refused, with both versions', () => {
  expect(migrate('job', { format: 'panewright.job', version: 7 })).toEqual({
    ok: false,
    refusal: { code: 'DOCUMENT_NEWER', kind: 'job', found: 7, newest: newestVersion(migrationChains.job) },
  });
});

test.each([
  [null, 'DOCUMENT_NOT_AN_OBJECT'],
  [[], 'DOCUMENT_NOT_AN_OBJECT'],
  ['{}', 'DOCUMENT_NOT_AN_OBJECT'],
  [{}, 'DOCUMENT_OTHER_FORMAT'],
  [{ format: 'panewright.catalogue', version: 1 }, 'DOCUMENT_OTHER_FORMAT'],
  [{ format: 'panewright.job' }, 'DOCUMENT_VERSION_UNREADABLE'],
  [{ format: 'panewright.job', version: '1' }, 'DOCUMENT_VERSION_UNREADABLE'],
  [{ format: 'panewright.job', version: 0 }, 'DOCUMENT_VERSION_UNREADABLE'],
  [{ format: 'panewright.job', version: 1.5 }, 'DOCUMENT_VERSION_UNREADABLE'],
])('%j is refused as a job: %s', (document, code) => {
  expect(migrate('job', document)).toMatchObject({ ok: false, refusal: { code } });
});

// A job as the first version wrote it. It is never changed.
const versionOne = {
  format: 'panewright.job',
  version: 1,
  id: 'old',
  name: 'An old job',
  customer: { name: '', address: '', contact: '' },
  site: { kind: 'boat', name: '', notes: '' },
  units: 'in',
  choices: {
    fabric: 'mesh-black',
    grain: 'either',
    fit: { all: 6.35, edges: {} },
    finish: { kind: 'hotCut' },
    hold: {
      spacing: 609.6,
      upTo: 685.8,
      pocket: 76.2,
      outside: 'disc-20x5',
      inside: 'disc-20x5',
      poleOut: 'north',
    },
    wrapFilm: 'film-clear',
    tape: 'foam-25',
    thread: 'polyester-90',
    weather: { wind: 5.5, gustFactor: 1.66, hottest: 70 },
  },
  openings: [
    {
      id: 'W1',
      name: 'Hatch',
      place: '',
      survey: {
        method: 'tape',
        diagonalsTo: 'sharp',
        readings: [{ of: 'bottom', entered: '24 3/8', unit: 'in', sigma: 0.8 }],
      },
      glazing: { layers: [{ kind: 'glass', thickness: 4 }], standOff: 0, curved: false },
      exit: false,
      driving: false,
      obstructions: [],
      choices: {},
      notes: '',
    },
  ],
  notes: '',
};

test('a job of version 1 opens as one of version 3, its readings as they were entered', () => {
  const read = migrate('job', versionOne);
  expect(read.ok && job.parse(read.value)).toEqual({ ...versionOne, version: 3 });
});

test('a catalogue of version 1 opens as one of version 2', () => {
  const read = migrate('catalogue', { ...defaultCatalogue, version: 1 });
  expect(read.ok && catalogue.parse(read.value)).toEqual(defaultCatalogue);
});

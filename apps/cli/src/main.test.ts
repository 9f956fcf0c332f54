import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { main, searchHere } from '@panewright/cli';
import { exampleJob, type Plan, planSchema } from '@panewright/contract';
import { afterAll, expect, test } from 'vitest';

const folder = mkdtempSync(join(tmpdir(), 'panewright-cli-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const at = (...parts: string[]) => join(folder, ...parts);
const put = (name: string, value: unknown) => {
  writeFileSync(at(name), typeof value === 'string' ? value : JSON.stringify(value));
  return at(name);
};
const good = put('job.json', exampleJob);

async function run(...argv: string[]) {
  let out = '';
  let err = '';
  const code = await main(argv, {
    out: (text) => {
      out += text;
    },
    err: (text) => {
      err += text;
    },
    fetch: () => Promise.reject(new Error('refused')),
    clock: () => performance.now() / 1000,
    today: () => '2026-11-25',
    searchThreads: searchHere,
  });
  return { code, out, err };
}

test('plan writes every sheet and cut file and the plan itself, and lists them', async () => {
  const { code, out } = await run('plan', good, '--out', at('set'), '--seed', '3');
  expect(code).toBe(0);
  const { files } = JSON.parse(readFileSync(at('set', 'files.json'), 'utf8')) as {
    files: { path: string; bytes: number }[];
  };
  for (const { path, bytes } of files) expect(readFileSync(at('set', path)).length).toBe(bytes);
  const paths = files.map(({ path }) => path);
  expect(paths).toEqual(expect.arrayContaining(['plan.json', 'lay.svg', 'lay.dxf']));
  for (const ending of ['.pdf', '.svg', '.dxf', '.csv'])
    expect(paths.some((path) => path.endsWith(ending))).toBe(true);
  for (const path of paths.filter((one) => one.endsWith('.pdf')))
    expect(readFileSync(at('set', path)).subarray(0, 5).toString()).toBe('%PDF-');
  const plan = JSON.parse(readFileSync(at('set', 'plan.json'), 'utf8')) as Plan;
  expect(planSchema.safeParse(plan).error).toBeUndefined();
  expect(plan.seed).toBe(3);
  expect(out).toContain('1 opening, 1 pattern');
  expect(out).toContain(`${files.length} files in`);
});

test('the same job gives the same bytes', async () => {
  await run('plan', good, '--out', at('again'), '--seed', '3');
  const { files } = JSON.parse(readFileSync(at('set', 'files.json'), 'utf8')) as {
    files: { path: string }[];
  };
  for (const { path } of files)
    expect(readFileSync(at('again', path)).equals(readFileSync(at('set', path))), path).toBe(true);
});

test('a second run takes away what is no longer made, and nothing else', async () => {
  writeFileSync(at('set', 'notes.txt'), 'mine');
  const before = new Set(readdirSync(at('set'), { recursive: true }) as string[]);
  const none = put('none.json', { ...exampleJob, openings: [] });
  expect((await run('plan', none, '--out', at('set'))).code).toBe(0);
  expect(readFileSync(at('set', 'notes.txt'), 'utf8')).toBe('mine');
  expect(before.has('lay.svg')).toBe(true);
  expect(existsSync(at('set', 'lay.svg'))).toBe(false);
});

test('a folder with other things in it is left alone', async () => {
  mkdirSync(at('other'));
  writeFileSync(at('other', 'thesis.txt'), 'mine');
  const { code, err } = await run('plan', good, '--out', at('other'));
  expect(code).toBe(2);
  expect(err).toContain('holds other things');
  expect(readdirSync(at('other'))).toEqual(['thesis.txt']);
  expect(readdirSync(folder).filter((name) => name.startsWith('.'))).toEqual([]);
});

test('a folder that cannot be made is said', async () => {
  const { code, err } = await run('plan', good, '--out', join(good, 'below-a-file'));
  expect(code).toBe(2);
  expect(err).toMatch(/cannot be written: .*\.\n$/);
});

test('check tells a fine job by 0 and one that cannot be made by 3', async () => {
  const fine = await run('check', good);
  expect(fine.code).toBe(0);
  expect(fine.out).toContain('Can hurt someone');
  const { survey: whole } = exampleJob.openings[0]!;
  if (whole.method !== 'tape') throw new Error('the example is taped');
  const survey = { ...whole, readings: whole.readings.slice(1) };
  const stopped = put('stopped.json', { ...exampleJob, openings: [{ ...exampleJob.openings[0], survey }] });
  const stop = await run('check', stopped);
  expect(stop.code).toBe(3);
  expect(stop.out).toContain('Opening Side window lacks bottom side.');
  const json = JSON.parse((await run('check', stopped, '--json')).out);
  expect(json.counts.stop).toBe(1);
  expect(json.findings[0]).toMatchObject({ code: 'READING_MISSING', numbers: { readings: 'bottom' } });
});

test('hold tells every point of the example, and with an opening which magnets would hold it', async () => {
  const { code, out } = await run('hold', good, '--opening', 'W1');
  expect(code).toBe(0);
  expect(out).toContain('try it before you trust it');
  expect(out).toMatch(/ 1 {2}.*creeps at/);
  expect(out).toMatch(/\* disc-20x5: 6 points/);
  expect(out).toContain('for a slack of 0.2 % to 1.0 %, which is usual and was not measured');
  expect(out).not.toMatch(/NaN|undefined|\(not given\)/);
  const json = JSON.parse((await run('hold', good, '--json')).out);
  expect(json.openings[0].points).toHaveLength(6);
  expect((await run('hold', good, '--opening', 'W7')).code).toBe(2);
});

// Oracle: the reference forces (see the file of the magnets' own tests for where each is from).
test('pull prints the reference forces, within each case’s tolerance', async () => {
  for (const name of ['forceCases', 'publishedFemCases']) {
    const path = fileURLToPath(
      new URL(`../../../packages/magnets/src/reference/${name}.json`, import.meta.url),
    );
    const read = JSON.parse(readFileSync(path, 'utf8'));
    const cases = (Array.isArray(read) ? read : read.cases) as {
      id: string;
      force_N: number[];
      tol_rel: number;
    }[];
    const { code, out } = await run('pull', put('cases.json', cases), '--json');
    expect(code).toBe(0);
    const forces = JSON.parse(out) as { id: string; force_N: number[] }[];
    expect(forces.map(({ id }) => id)).toEqual(cases.map(({ id }) => id));
    for (const [i, one] of cases.entries()) {
      const size = Math.hypot(...one.force_N);
      for (const [axis, force] of one.force_N.entries())
        expect(Math.abs(forces[i]!.force_N[axis]! - force), one.id).toBeLessThan(
          Math.max(one.tol_rel * size, 1e-7),
        );
    }
  }
});

test('pack lays every piece of an instance inside of the strip', async () => {
  const square = (side: number) => [
    [0, 0],
    [side, 0],
    [side, side],
    [0, side],
  ];
  const instance = {
    name: 'squares',
    stripWidth: 10,
    pieces: [
      { id: 0, demand: 3, allowedRotationsDeg: [0], polygon: square(5) },
      { id: 1, demand: 1, allowedRotationsDeg: [0], polygon: square(4) },
    ],
  };
  const { code, out } = await run(
    'pack',
    put('instance.json', instance),
    '--seconds',
    '0.2',
    '--seed',
    '1',
    '--json',
  );
  expect(code).toBe(0);
  const lay = JSON.parse(out);
  // 3 squares of 5 and one of 4 fit two by two: length 10, and no lay is shorter than the second column needs.
  expect(lay.length).toBeCloseTo(10, 6);
  expect(lay.density).toBeCloseTo(91, 6);
  expect(lay.placements).toHaveLength(4);
  for (const { x, y, flipped, rotationDeg } of lay.placements) {
    expect(Math.min(x, y)).toBeGreaterThanOrEqual(-1e-9);
    expect([flipped, rotationDeg]).toEqual([false, 0]);
  }
});

test('pack gives the same lay for the same seed and evaluations, and another for another seed', async () => {
  const triangle = (width: number, height: number) => [
    [0, 0],
    [width, 0],
    [width / 3, height],
  ];
  const piece = (id: number) => ({
    id,
    demand: 3,
    allowedRotationsDeg: [0, 180],
    polygon: triangle(3 + id, 6 - id),
  });
  const instance = put('triangles.json', { name: 'triangles', stripWidth: 10, pieces: [0, 1, 2].map(piece) });
  const lay = (seed: string) => run('pack', instance, '--evaluations', '60000', '--seed', seed, '--json');
  const once = await lay('7');
  expect(once.code).toBe(0);
  expect((await lay('7')).out).toBe(once.out);
  expect((await lay('8')).out).not.toBe(once.out);
});

test.each([
  [['plan', good], '--out DIR'],
  [['plan'], 'Name one job.'],
  [['plan', good, good], 'one too many'],
  [['plan', good, '--out', at('x'), '--seed=-1'], '--seed must be a whole number'],
  [['plan', good, '--out', at('x'), '--paper', 'a5'], '--paper is letter, a4, a3, tabloid or a roll'],
  [['plan', good, '--out', at('x'), '--date', 'today'], 'a day that exists, as YYYY-MM-DD'],
  [['check', at('nowhere.json')], 'is not there'],
  [['check', folder], 'is a folder'],
  [['check', good, '--colour'], '--colour'],
  [['check', good, '--catalogue', put('no.json', '{}')], 'not a catalogue'],
  [['pack', good, '--seconds', '0'], 'number above 0'],
  [['pack', good, '--seconds', '1', '--evaluations', '5'], 'not both'],
  [['call', 'nothing'], 'no operation'],
  [['call', 'listJobs'], 'npm start'],
  [['cut', good], 'no command “cut”'],
])('panewright %j is answered with a sentence and 2', async (argv, say) => {
  const { code, out, err } = await run(...argv);
  expect(code).toBe(2);
  expect(`${out}${err}`).toContain(say);
});

test('help names every command', async () => {
  const { code, out } = await run('--help');
  expect(code).toBe(0);
  for (const command of ['plan', 'check', 'hold', 'pull', 'pack', 'call', 'operations'])
    expect(out).toContain(`panewright ${command}`);
});

test('outline tells the lines and arcs of a drawing, and asks for the unit where there is none', async () => {
  // An SVG of stated size; in the second the user unit has no size.
  const path = '<path d="M0 0H400V260A40 40 0 0 1 360 300H0Z"/></svg>';
  const head = '<svg xmlns="http://www.w3.org/2000/svg"';
  const stated = put('stated.svg', `${head} width="400mm" height="300mm" viewBox="0 0 400 300">${path}`);
  expect((await run('outline', stated)).out).toContain('5 lines and arcs, 400.0 × 300.0 mm.');
  const { survey } = JSON.parse((await run('outline', stated, '--json')).out).outlines[0];
  expect(survey).toMatchObject({ method: 'outline', from: { kind: 'file', name: 'stated.svg' } });
  const bare = put('bare.svg', `${head} viewBox="0 0 400 300">${path}`);
  const asked = await run('outline', bare);
  expect(asked.code).toBe(3);
  expect(asked.err).toContain('does not say what its numbers are');
  expect((await run('outline', bare, '--unit', 'mm')).out).toContain('400.0 × 300.0 mm.');
});

test('plan takes a roll, a language, labels from a place on and a trailing knife', async () => {
  const asked = ['--paper', '36in', '--correction', '1.002x0.998', '--language', 'de', '--large'];
  const labels = [
    '--labels',
    '4 × 2 in, 2 × 5',
    '--label-start',
    '3',
    '--sewn',
    '--address',
    'http://127.0.0.1:4750',
  ];
  const knife = ['--knife-offset', '0.5', '--overcut', '2', '--printer-test', '--copies', '2'];
  const { code, err } = await run('plan', good, '--out', at('asked'), ...asked, ...labels, ...knife);
  expect(err).toBe('');
  expect(code).toBe(0);
  for (const path of [
    'patterns/P1-roll-36in.pdf',
    'labels-sewn.pdf',
    'lay.plt',
    'printer-test-roll-36in.pdf',
  ])
    expect(existsSync(at('asked', path)), path).toBe(true);
});

test.each([
  [['--paper', '4in'], /101.6 mm wide/],
  [['--correction', '1.2x1'], /across the paper is 1.2/],
  [['--correction', '1.2'], /two factors/],
  [['--language', 'fr'], /“en”, “de” or “es”/],
  [['--labels', 'none'], /no sheet of labels/],
  [['--sewn'], /--labels NAME/],
  [['--knife-offset', '9'], /“hpgl.knife.offset” must be 5 or less/],
  [['--address', 'javascript:0'], /“address”/],
  [['--printer', 'attic'], /no printer “attic”/],
])('plan with %j is refused with a sentence', async (more, sentence) => {
  const { code, err } = await run('plan', good, '--out', at('never'), ...more);
  expect(code).toBe(2);
  expect(err).toMatch(sentence);
  expect(existsSync(at('never'))).toBe(false);
});

import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { demoJob, exampleJob, type JobSummary, type Plan } from '@panewright/contract';
import { beforeAll, expect, test } from 'vitest';
import { ask, ensureBuilt, root, startServer } from './builtServer.ts';
import { temporaryFolder } from './temporary.ts';

const folder = temporaryFolder();
beforeAll(ensureBuilt, 600_000);

/** The command of the clone, in a process of its own, from another folder. */
const panewright = (...argv: string[]) =>
  spawnSync(process.execPath, [join(root, 'apps/cli/bin/panewright.mjs'), ...argv], {
    cwd: folder,
    encoding: 'utf8',
  });

/** A search that would go on for minutes: it is not answered by itself within a test. */
const endless = {
  instance: {
    name: 'stars',
    stripWidth: 100,
    pieces: [
      {
        id: 0,
        demand: 60,
        allowedRotationsDeg: [0, 90, 180, 270],
        polygon: [
          [0, 0],
          [10, 3],
          [20, 0],
          [14, 9],
          [17, 20],
          [9, 13],
          [1, 18],
          [5, 8],
        ],
      },
    ],
  },
  evaluations: 400_000_000,
};

test('the server has the demo in it, answers while it computes, and takes up the next work when one is given up', async () => {
  const { address, kill } = await startServer(join(folder, 'data'));
  const { body } = await ask<{ jobs: JobSummary[] }>(address, 'listJobs', {});
  expect(body.jobs).toMatchObject([{ id: demoJob.id, revision: 1 }]);
  const page = await fetch(`${address}/jobs/${demoJob.id}`);
  expect(page.headers.get('content-type')).toContain('text/html');

  // More long work than there are threads.
  const giveUp = new AbortController();
  let ended = 0;
  const long = Array.from({ length: 6 }, () =>
    ask(address, 'pack', endless, giveUp.signal)
      .catch(() => {})
      .then(() => ended++),
  );
  await new Promise((resolve) => setTimeout(resolve, 300));
  expect((await ask(address, 'openJob', { id: demoJob.id })).status).toBe(200);
  expect(ended).toBe(0);
  giveUp.abort();
  await Promise.all(long);
  const { status, body: plan } = await ask<Plan>(address, 'plan', { job: exampleJob, effort: 0 });
  expect([status, plan.format]).toEqual([200, 'panewright.plan']);

  const sheets = await ask<{ files: { path: string; base64: string }[] }>(address, 'sheets', {
    job: exampleJob,
    effort: 0,
    date: '2026-11-25',
  });
  const order = sheets.body.files.find(({ path }) => path.endsWith('.pdf'));
  expect(Buffer.from(order!.base64, 'base64').subarray(0, 5).toString()).toBe('%PDF-');
  await kill();
});

test('npx panewright plans the demo from another folder', () => {
  const { status, stdout } = panewright('plan', join(root, 'demo/camper.job.json'), '--out', 'set');
  expect(status).toBe(0);
  expect(stdout).toContain('9 openings');
  const { files } = JSON.parse(readFileSync(join(folder, 'set', 'files.json'), 'utf8')) as {
    files: { path: string }[];
  };
  for (const { path } of files) expect(existsSync(join(folder, 'set', path)), path).toBe(true);
});

// Oracle: the outline the picture was rendered from (packages/photo/src/reference/README.md).
test('npx panewright trace prints the outline of a photo in the form of its truth', () => {
  const reference = join(root, 'packages/photo/src/reference');
  const truth = JSON.parse(readFileSync(join(reference, '01_easy.json'), 'utf8')) as {
    outline: { segments: { type: string; radius?: number }[]; bbox: [[number, number], [number, number]] };
  };
  const photo = join(reference, '01_easy.jpg');
  const { status, stdout } = panewright(
    'trace',
    photo,
    '--tape',
    '9.1-12.0=1323.9',
    '--ruler',
    '200.18x150.29',
    '--json',
  );
  expect(status).toBe(0);
  const traced = JSON.parse(stdout);
  expect(traced.outline.segments.map(({ type }: { type: string }) => type).sort()).toEqual(
    truth.outline.segments.map(({ type }) => type).sort(),
  );
  // What an opening takes is the same outline, as well known as the photo says.
  const { survey } = traced;
  expect(survey).toMatchObject({ method: 'outline', from: { kind: 'photo', name: '01_easy.jpg' } });
  expect(survey.segments.map(({ to }: { to: unknown }) => to)).toEqual(
    traced.bulges.segments.map(({ to }: { to: unknown }) => to),
  );
  expect(survey.sizeSigma).toEqual({ width: traced.width.sigma, height: traced.height.sigma });
  const [[left, bottom], [right, top]] = truth.outline.bbox;
  for (const [measure, size] of [
    [traced.width, right - left],
    [traced.height, top - bottom],
  ])
    expect(measure.interval[0] < size && size < measure.interval[1]).toBe(true);
  for (const segment of traced.outline.segments)
    if (segment.type === 'arc') {
      const [cx, cy] = segment.center;
      for (const [x, y] of [segment.start, segment.end])
        expect(Math.hypot(x - cx, y - cy)).toBeCloseTo(segment.radius, 6);
    }
});

test.each([
  [['--tape', '9.1-12.0'], 'MARKER.CORNER'],
  [['--tape', '9.1-12.0=1323.9', '--ruler', '200'], 'XxY'],
  [['--tape', '9.1-12.0=1323.9', '--line', 'red'], 'darkest, inner or outer'],
  [['--tape', '9.1-12.0=1323.9', '--taps', '620'], 'PHOTO:X,Y'],
  [['--tape', '9.1-12.0=1323.9', '--taps', '1:1,2 3,4'], 'enclose nothing'],
  [['--tape', '9.1-12.0=1323.9', '--taps', '2:1,2 3,4 5,6'], 'of photo 2, and there is 1 photo'],
  [['--tape', '9.1-12.0=1323.9'], 'not a JPEG'],
  [[], 'not a JPEG'],
])('npx panewright trace of a job with %j is refused in words', (options, say) => {
  const { status, stderr } = panewright('trace', join(root, 'demo/camper.job.json'), ...options);
  expect(status).toBe(2);
  expect(stderr).toContain(say);
});

import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { doorAnswers, inOne, readJob, readText, refusedBody } from '@panewright/contract';
import { inProcess, makeServer } from '@panewright/server';
import { expect, test } from 'vitest';
import { runCli } from '../cliRun.ts';
import { temporaryFolder } from '../temporary.ts';
import { badTexts, badValues, changedJob } from './badJobs.ts';
import { judgeSentence } from './judge.ts';

const folder = temporaryFolder();
const server = makeServer({
  ports: {} as never,
  compute: inProcess,
  onFault: (error) => {
    throw error;
  },
});

const bad = [
  ...badTexts,
  ...badValues.map(([path, value, say]) => {
    const shown = typeof value === 'symbol' ? 'left out' : JSON.stringify(value).slice(0, 60);
    return [`${path}: ${shown}`, JSON.stringify(changedJob(path, value)), say] as const;
  }),
];

test('there are 200 of them or more, no two alike', () => {
  expect(new Set(bad.map(([, text]) => text)).size).toBe(bad.length);
  expect(bad.length).toBeGreaterThanOrEqual(200);
});

test.each(bad)(
  '%s is refused in the same clear words directly, over HTTP and on the command line',
  async (_, text, say) => {
    const value = readText(text);
    const read = value.ok ? readJob(value.value) : value;
    if (read.ok) throw new Error('it was taken');
    const direct = refusedBody(read.refusal);
    judgeSentence(direct.say.what, text);
    expect(direct.say.what).toContain(say);

    const path = join(folder, 'job.json');
    writeFileSync(path, text);
    for (const command of [
      ['check', path],
      ['plan', path, '--out', join(folder, 'never')],
    ]) {
      const plain = await runCli(command);
      expect(plain).toMatchObject({ code: 2, out: '' });
      const json = await runCli([...command, '--json']);
      expect(json.code).toBe(2);
      expect(JSON.parse(json.out)).toEqual(direct);
      expect(plain.err).toBe(`${inOne(direct.say)}\n`);
    }

    const payload = value.ok ? JSON.stringify({ job: value.value }) : text;
    const headers = { host: 'localhost', 'content-type': 'application/json' };
    const answer = await server.inject({ method: 'POST', url: '/api/check', headers, payload });
    expect(answer.json()).toEqual(direct);
    expect(answer.statusCode).toBe(doorAnswers[direct.refusal.code].status);
  },
);

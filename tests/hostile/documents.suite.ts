import { callOperation, httpAnswer, type Plan } from '@panewright/contract';
import { inProcess, makeServer } from '@panewright/server';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { judge, wordFindings } from './judge.ts';
import { wildDocument } from './wildJobs.ts';

const server = makeServer({
  ports: {} as never,
  compute: inProcess,
  onFault: (error) => {
    throw error;
  },
});

/** Documents of one part. */
export const RUNS = Number(process.env['PANEWRIGHT_RUNS'] ?? 60);

const HEADERS = { host: 'localhost', 'content-type': 'application/json' };

/** Random job documents: each is refused in clear words or planned in finite numbers, over HTTP and directly. */
export function documentSuite(runs: number, seed: number): void {
  const title = `${runs} random job documents (${seed}) are each refused in clear words or planned in finite numbers, over HTTP and directly`;
  test(title, { timeout: 900_000 }, () => play(runs, seed));
}

async function play(runs: number, seed: number): Promise<void> {
  const seen = { refused: 0, planned: 0 };
  const codes = new Set<string>();
  await fc.assert(
    fc.asyncProperty(wildDocument, async (job) => {
      const payload = JSON.stringify({ job, effort: 0 });
      const answer = await server.inject({ method: 'POST', url: '/api/plan', headers: HEADERS, payload });
      const body = answer.json() as Plan | { refusal: { code: string } };
      const verdict = judge(answer.statusCode, body, JSON.parse(payload).job);
      seen[verdict]++;
      if ('refusal' in body) codes.add(body.refusal.code);
      else for (const code of wordFindings(body, job)) codes.add(code);
      // A plan takes its time: of those one in four is made again at the other door.
      if (verdict === 'planned' && seen.planned % 4 !== 0) return;
      const direct = httpAnswer(await callOperation('plan', { job, effort: 0 }));
      expect(direct.status).toBe(answer.statusCode);
      expect(JSON.stringify(direct.body) === answer.body).toBe(true);
    }),
    { numRuns: runs, seed },
  );
  // The documents are of both kinds, and not all wrong in the same way.
  expect(seen.refused).toBeGreaterThan(runs / 2);
  expect(seen.planned).toBeGreaterThan(runs / 15);
  expect(codes.size).toBeGreaterThan(15);
}

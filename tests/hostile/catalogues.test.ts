import { callOperation, exampleJob, httpAnswer, type Plan } from '@panewright/contract';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { judge, wordFindings } from './judge.ts';
import { wildCatalogue } from './wildJobs.ts';

// PANEWRIGHT_RUNS=5000 tries 1,000, as many as were tried when this was written.
const RUNS = Math.round(Number(process.env['PANEWRIGHT_RUNS'] ?? 1000) / 5);

test(`${RUNS} random catalogues are each refused in clear words or planned in finite numbers`, {
  timeout: 600_000,
}, async () => {
  const seen = { refused: 0, planned: 0 };
  await fc.assert(
    fc.asyncProperty(wildCatalogue, async (catalogue) => {
      const { status, body } = httpAnswer(
        await callOperation('plan', { job: exampleJob, catalogue, effort: 0 }),
      );
      const verdict = judge(status, body, exampleJob);
      if (verdict === 'planned') wordFindings(body as Plan, exampleJob);
      seen[verdict]++;
    }),
    { numRuns: RUNS, seed: 20261125 },
  );
  expect(seen.refused).toBeGreaterThan(RUNS / 10);
  expect(seen.planned).toBeGreaterThan(RUNS / 10);
});

import { expect, test } from 'vitest';
import { ensureBuilt } from '../builtServer.ts';

interface Outcome {
  readonly said: number;
  readonly lost: readonly object[];
}

// The whole run, 300 rounds, is `npm run bench -- kill`; its figure is in docs/bench.md.
test('no reading that the page called kept is lost when server, network or tab is ended in the middle of edits', async () => {
  ensureBuilt();
  const bench = (await import(new URL('../../bench/kill.mjs', import.meta.url).href)) as {
    readonly killRounds: (rounds: number, seed: number) => Promise<Outcome>;
  };
  const { said, lost } = await bench.killRounds(4, 11);
  expect(lost).toEqual([]);
  expect(said).toBeGreaterThan(0);
});

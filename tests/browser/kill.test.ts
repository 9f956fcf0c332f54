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
  // A round that ends at once has said nothing: more are played until something was said.
  let said = 0;
  for (let seed = 11; said === 0 && seed < 17; seed++) {
    const rounds = await bench.killRounds(4, seed);
    expect(rounds.lost).toEqual([]);
    said += rounds.said;
  }
  expect(said).toBeGreaterThan(0);
});

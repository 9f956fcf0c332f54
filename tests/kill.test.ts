import { exampleJob } from '@panewright/contract';
import { beforeAll, expect, test } from 'vitest';
import { ask, ensureBuilt, startServer } from './builtServer.ts';
import { temporaryFolder } from './temporary.ts';

const KILLS = 5;
const WRITERS = 4;

const data = temporaryFolder();
const start = () => startServer(data);

beforeAll(ensureBuilt, 600_000);

interface Body {
  readonly revision?: number;
  readonly job?: { readonly name: string };
}

/** Saves one job over and over until the server is gone. Notes what was answered, and only that. */
async function write(
  address: string,
  id: string,
  acknowledged: Map<string, string[]>,
  onSaved: () => void,
): Promise<void> {
  const saved = acknowledged.get(id)!;
  try {
    const now = await ask<Body>(address, 'openJob', { id });
    // A save the kill cut off may be there without having been answered: go on from what is there.
    let basedOn: number | null = now.status === 200 ? now.body.revision! : null;
    for (;;) {
      const name = `${id}, after ${basedOn}`;
      const { status, body } = await ask<Body>(address, 'saveJob', {
        job: { ...exampleJob, id, name },
        basedOn,
      });
      if (status !== 200) throw new Error(`a save was refused: ${JSON.stringify(body)}`);
      basedOn = body.revision!;
      saved[basedOn] = name;
      onSaved();
    }
  } catch (error) {
    if (error instanceof TypeError) return; // fetch: the connection is gone
    throw error;
  }
}

test(`what was answered as saved is there after each of ${KILLS} kills in the middle of saves`, {
  timeout: 600_000,
}, async () => {
  const acknowledged = new Map(Array.from({ length: WRITERS }, (_, i) => [`job-${i}`, [] as string[]]));
  let dice = 1;
  let next = start();
  for (let round = 0; round < KILLS; round++) {
    const { address, kill } = await next;
    // The one after stands ready before this one is killed: two programs on one folder, as may happen in a shop.
    next = start();
    for (const [id, names] of acknowledged) {
      const newest = names.length - 1;
      if (newest < 1) continue;
      const { body } = await ask<Body>(address, 'openJob', { id, revision: newest });
      expect(body.job?.name, `${id}, revision ${newest}, after kill ${round}`).toBe(names[newest]);
    }
    // Killed after one save or a few, a moment later: most likely in the middle of the next.
    dice = (dice * 48271) % 2147483647;
    let left = 1 + (dice % 6);
    const writers: Promise<void>[] = [];
    await new Promise<void>((enough) => {
      const onSaved = () => {
        if (--left === 0) enough();
      };
      for (const id of acknowledged.keys()) writers.push(write(address, id, acknowledged, onSaved));
    });
    await new Promise((resolve) => setTimeout(resolve, dice % 5));
    await kill();
    await Promise.all(writers);
  }
  const { address, kill } = await next;
  let total = 0;
  for (const [id, names] of acknowledged)
    for (const [revision, name] of names.entries()) {
      if (name === undefined || revision === 0) continue;
      total++;
      const { body } = await ask<Body>(address, 'openJob', { id, revision });
      expect(body.job?.name).toBe(name);
    }
  expect(total).toBeGreaterThanOrEqual(KILLS);
  await kill();
});

import { type ChildProcess, execFileSync, spawn } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { exampleJob } from '@panewright/contract';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { temporaryFolder } from './temporary.ts';

const KILLS = 30;
const WRITERS = 4;

const root = fileURLToPath(new URL('..', import.meta.url));
const data = temporaryFolder();
const running = new Set<ChildProcess>();

beforeAll(() => {
  execFileSync(process.execPath, ['tools/run/build.mjs'], { cwd: root });
});
afterAll(() => {
  for (const child of running) child.kill('SIGKILL');
});

interface Served {
  readonly address: string;
  readonly kill: () => Promise<void>;
}

/** Starts the built server on the data folder. */
function start(): Promise<Served> {
  const program = `const { serve } = await import(${JSON.stringify(`${root}apps/server/dist/server.mjs`)}); await serve({ root: ${JSON.stringify(root)} });`;
  const child = spawn(process.execPath, ['--input-type=module', '-e', program], {
    env: { ...process.env, PANEWRIGHT_DATA: data, PANEWRIGHT_PORT: '0' },
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  running.add(child);
  const kill = () =>
    new Promise<void>((gone) => {
      running.delete(child);
      child.once('exit', () => gone());
      child.kill('SIGKILL');
    });
  return new Promise((resolve, reject) => {
    let printed = '';
    child.stdout.on('data', (chunk: Buffer) => {
      printed += chunk.toString();
      const address = /http:\/\/127\.0\.0\.1:\d+/.exec(printed);
      if (address) resolve({ address: address[0], kill });
    });
    child.once('exit', (code) => reject(new Error(`the server ended with ${code} before it was ready`)));
  });
}

interface Body {
  readonly revision?: number;
  readonly job?: { readonly name: string };
}

async function ask(address: string, name: string, input: unknown): Promise<{ status: number; body: Body }> {
  const response = await fetch(`${address}/api/${name}`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify(input),
  });
  return { status: response.status, body: (await response.json()) as Body };
}

/** Saves one job over and over until the server is gone. Notes what was answered, and only that. */
async function write(address: string, id: string, acknowledged: Map<string, string[]>): Promise<void> {
  const saved = acknowledged.get(id)!;
  try {
    const now = await ask(address, 'openJob', { id });
    // A save the kill cut off may be there without having been answered: go on from what is there.
    let basedOn: number | null = now.status === 200 ? now.body.revision! : null;
    for (;;) {
      const name = `${id}, after ${basedOn}`;
      const { status, body } = await ask(address, 'saveJob', { job: { ...exampleJob, id, name }, basedOn });
      if (status !== 200) throw new Error(`a save was refused: ${JSON.stringify(body)}`);
      basedOn = body.revision!;
      saved[basedOn] = name;
    }
  } catch (error) {
    if (error instanceof TypeError) return; // fetch: the connection is gone
    throw error;
  }
}

test(`what was answered as saved is there after each of ${KILLS} kills in the middle of saves`, async () => {
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
      const { body } = await ask(address, 'openJob', { id, revision: newest });
      expect(body.job?.name, `${id}, revision ${newest}, after kill ${round}`).toBe(names[newest]);
    }
    const writers = [...acknowledged.keys()].map((id) => write(address, id, acknowledged));
    dice = (dice * 48271) % 2147483647;
    await new Promise((resolve) => setTimeout(resolve, 20 + (dice % 100)));
    await kill();
    await Promise.all(writers);
  }
  const { address, kill } = await next;
  let total = 0;
  for (const [id, names] of acknowledged)
    for (const [revision, name] of names.entries()) {
      if (name === undefined || revision === 0) continue;
      total++;
      const { body } = await ask(address, 'openJob', { id, revision });
      expect(body.job?.name).toBe(name);
    }
  expect(total).toBeGreaterThan(KILLS);
  await kill();
});

import { type ChildProcess, execFileSync, spawn } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { afterAll } from 'vitest';

export const root = fileURLToPath(new URL('..', import.meta.url));

/** Builds what is not built yet. */
export function ensureBuilt(): void {
  execFileSync(process.execPath, ['tools/run/build.mjs'], { cwd: root, stdio: ['ignore', 'ignore', 'pipe'] });
}

export interface Served {
  readonly address: string;
  readonly kill: () => Promise<void>;
}

const running = new Set<ChildProcess>();
afterAll(() => {
  for (const child of running) child.kill('SIGKILL');
});

/** Starts the built server, as npm start does once it is built, on a data folder and a free port. */
export function startServer(data: string): Promise<Served> {
  const built = JSON.stringify(`${root}apps/server/dist/server.mjs`);
  const program = `const { serve } = await import(${built}); await serve({ root: ${JSON.stringify(root)} });`;
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

/** One operation over HTTP. */
export async function ask<B>(
  address: string,
  name: string,
  input: unknown,
  signal?: AbortSignal,
): Promise<{ readonly status: number; readonly body: B }> {
  const response = await fetch(`${address}/api/${name}`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify(input),
    ...(signal ? { signal } : {}),
  });
  return { status: response.status, body: (await response.json()) as B };
}

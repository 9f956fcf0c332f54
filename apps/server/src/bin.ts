import { spawn } from 'node:child_process';
import { availableParallelism } from 'node:os';
import { join } from 'node:path';
import { demoJob } from '@panewright/contract';
import { workerPool } from './compute/workerPool.ts';
import { makeServer } from './http/makeServer.ts';
import { putDemoIn } from './openDemo.ts';
import { sqliteStore } from './store/sqliteStore.ts';

const FIRST_PORT = 4750;

/** Serves the clone at `root` on 127.0.0.1 until the process is told to stop. */
export async function serve({ root }: { readonly root: string }): Promise<void> {
  const { env } = process;
  const store = sqliteStore(env.PANEWRIGHT_DATA ?? join(root, 'data'), () => new Date().toISOString());
  await putDemoIn(store);
  const threads = Math.max(1, Math.min(4, availableParallelism() - 1));
  const compute = workerPool(new URL('./worker.mjs', import.meta.url), threads);
  const server = makeServer({
    ports: store,
    compute,
    web: join(root, 'apps', 'web', 'dist'),
    hosts: (env.PANEWRIGHT_HOSTS ?? '')
      .split(',')
      .map((name) => name.trim().toLowerCase())
      .filter(Boolean),
    onFault: (error) => console.error(error),
  });
  const port = await listen(server.listen.bind(server), env.PANEWRIGHT_PORT);
  const address = `http://127.0.0.1:${port}/jobs/${demoJob.id}`;
  console.log(`Panewright is at ${address}`);
  console.log('Stop it with Ctrl-C.');
  if (opensBrowser()) openBrowser(address);
  let stopping = false;
  const stop = async () => {
    if (stopping) process.exit(0);
    stopping = true;
    await server.close();
    await compute.close();
    await store.close();
    process.exit(0);
  };
  process.on('SIGINT', stop);
  process.on('SIGTERM', stop);
}

/** The port asked for, or the first free one from 4750 on. */
async function listen(
  start: (options: { port: number; host: string }) => Promise<string>,
  asked: string | undefined,
): Promise<number> {
  if (asked !== undefined && !/^\d{1,5}$/.test(asked))
    throw new Error(`PANEWRIGHT_PORT must be a port; it is “${asked}”.`);
  for (let port = Number(asked ?? FIRST_PORT); ; port++) {
    try {
      const address = await start({ port, host: '127.0.0.1' });
      return Number(new URL(address).port);
    } catch (error) {
      const taken = (error as { code?: string }).code === 'EADDRINUSE';
      if (!taken || asked !== undefined || port > FIRST_PORT + 100) throw error;
    }
  }
}

/** Only for a person at a desktop: a terminal, and a screen to show a window on. */
function opensBrowser(): boolean {
  const { env, platform, stdout } = process;
  if (!stdout.isTTY || env.CI || env.SSH_CONNECTION || env.PANEWRIGHT_NO_BROWSER) return false;
  return platform !== 'linux' || Boolean(env.DISPLAY || env.WAYLAND_DISPLAY);
}

function openBrowser(address: string): void {
  const [command, ...args] =
    process.platform === 'darwin'
      ? ['open', address]
      : process.platform === 'win32'
        ? ['cmd', '/c', 'start', '', address]
        : ['xdg-open', address];
  const child = spawn(command!, args, { stdio: 'ignore', detached: true });
  child.on('error', () => {});
  child.unref();
}

import { type ChildProcess, execFileSync, spawn } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { type Browser, chromium, type Page } from 'playwright-core';

const root = fileURLToPath(new URL('../..', import.meta.url));
const FLAGS =
  '--no-sandbox --disable-gpu --disable-quic --no-first-run --disable-background-networking --disable-component-update --disable-sync';

/** The built program on a free port and a data folder of its own, and a browser to use it with. */
export interface Opened {
  readonly address: string;
  readonly browser: Browser;
  /** Ends the server as a cut of power would. */
  readonly stopServer: () => Promise<void>;
  /** Starts it again at the same address, on the same data. */
  readonly startServer: () => Promise<void>;
  readonly close: () => Promise<void>;
}

export async function openBrowser(data: string): Promise<Opened> {
  const tools = (await import(new URL('../../tools/run/chromium.mjs', import.meta.url).href)) as {
    readonly findChromium: () => string | undefined;
  };
  const chromiumPath = tools.findChromium();
  if (!chromiumPath)
    throw new Error(
      'No Chromium was found. Install the system’s package “chromium”, or name one in PANEWRIGHT_CHROMIUM.',
    );
  execFileSync(process.execPath, ['tools/run/build.mjs'], { cwd: root });
  let { server, address } = await serve(data, '0');
  const browser = await chromium.launch({ executablePath: chromiumPath, args: FLAGS.split(' ') });
  const close = async () => {
    await browser.close();
    server.kill();
  };
  const stopServer = () =>
    new Promise<void>((gone) => {
      server.once('exit', () => gone());
      server.kill('SIGKILL');
    });
  const startServer = async () => {
    ({ server, address } = await serve(data, new URL(address).port));
  };
  return { address, browser, stopServer, startServer, close };
}

async function serve(
  data: string,
  port: string,
): Promise<{ readonly server: ChildProcess; readonly address: string }> {
  const server = spawn(process.execPath, ['tools/run/start.mjs'], {
    cwd: root,
    env: { ...process.env, PANEWRIGHT_DATA: data, PANEWRIGHT_PORT: port, PANEWRIGHT_NO_BROWSER: '1' },
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  let printed = '';
  for await (const chunk of server.stdout) {
    printed += String(chunk);
    const address = /http:\/\/127\.0\.0\.1:\d+/.exec(printed);
    if (address) return { server, address: address[0] };
  }
  throw new Error('the server ended before it gave its address');
}

/** What went wrong in a page, as the browser tells it; a test that uses a page expects none. */
export function faultsOf(page: Page): readonly string[] {
  const faults: string[] = [];
  page.on('pageerror', (error) => faults.push(error.message));
  page.on('console', (message) => {
    if (message.type() === 'error') faults.push(message.text());
  });
  return faults;
}

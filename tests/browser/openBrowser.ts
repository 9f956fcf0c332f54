import { type ChildProcess, execFileSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import type { Browser, Page } from 'playwright-core';

const root = fileURLToPath(new URL('../..', import.meta.url));

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

interface Tools {
  readonly startBrowser: () => Promise<Browser>;
  readonly serve: (
    data: string,
    port?: string,
  ) => Promise<{ readonly server: ChildProcess; readonly address: string }>;
}

/** @param keepsPage whether a browser keeps the page itself; fetching all of it takes a fifth of a page's first seconds */
export async function openBrowser(data: string, { keepsPage = false } = {}): Promise<Opened> {
  const run = (name: string) => import(new URL(`../../tools/run/${name}.mjs`, import.meta.url).href);
  const { findChromium } = (await run('chromium')) as { readonly findChromium: () => string | undefined };
  if (!findChromium())
    throw new Error(
      'No Chromium was found. Install the system’s package “chromium”, or name one in PANEWRIGHT_CHROMIUM.',
    );
  execFileSync(process.execPath, ['tools/run/build.mjs'], { cwd: root });
  const { serve, startBrowser } = (await run('served')) as Tools;
  let { server, address } = await serve(data);
  const browser = await startBrowser();
  const serviceWorkers = keepsPage ? 'allow' : 'block';
  const newContext = browser.newContext.bind(browser);
  browser.newContext = (options) => newContext({ serviceWorkers, ...options });
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

/** What went wrong in a page, as the browser tells it; a test that uses a page expects none. */
export function faultsOf(page: Page): readonly string[] {
  const faults: string[] = [];
  page.on('pageerror', (error) => faults.push(error.message));
  page.on('console', (message) => {
    if (message.type() === 'error') faults.push(message.text());
  });
  return faults;
}

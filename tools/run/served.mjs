// The program and a browser for those who use it as a person does: benchmarks, pictures, tests.
import { spawn } from 'node:child_process';
import { chromium } from 'playwright-core';
import { findChromium } from './chromium.mjs';
import { at, root } from './root.mjs';

/** Without these a closed network has the browser look for its maker's hosts, many at a time. */
const FLAGS =
  '--no-sandbox --disable-gpu --disable-quic --no-first-run --disable-background-networking --disable-component-update --disable-sync';

/** A browser with no profile; the Chromium of this machine. */
export const startBrowser = () => chromium.launch({ executablePath: findChromium(), args: FLAGS.split(' ') });

/** What a server prints once it listens: its own address, and that of the job to open with. */
export async function addressOf(server) {
  let printed = '';
  for await (const chunk of server.stdout) {
    printed += chunk;
    const found = /(http:\/\/127\.0\.0\.1:\d+)\S*(?=\s)/.exec(printed);
    if (found) return { address: found[1], demo: found[0] };
  }
  throw new Error('the server ended before it gave its address');
}

/** Serves a data folder as `npm start` does; on a free port where none is named. */
export async function serve(data, port = '0') {
  const server = spawn(process.execPath, [at('tools/run/start.mjs')], {
    cwd: root,
    env: { ...process.env, PANEWRIGHT_DATA: data, PANEWRIGHT_PORT: port, PANEWRIGHT_NO_BROWSER: '1' },
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  return { server, ...(await addressOf(server)) };
}

/** One operation of the server. */
export async function ask(address, name, input) {
  const response = await fetch(new URL(`/api/${name}`, address), {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify(input),
  });
  if (!response.ok) throw new Error(`${name}: ${await response.text()}`);
  return response.json();
}

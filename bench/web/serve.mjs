import { spawn } from 'node:child_process';
import { at } from '../../tools/run/root.mjs';

/** Serves a fresh data folder on a free port; answers with the address of the demo. */
export async function serve(data) {
  const server = spawn(process.execPath, [at('tools/run/start.mjs')], {
    env: { ...process.env, PANEWRIGHT_DATA: data, PANEWRIGHT_PORT: '0', PANEWRIGHT_NO_BROWSER: '1' },
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  let text = '';
  for await (const chunk of server.stdout) {
    text += chunk;
    const address = /http:\S+/.exec(text);
    if (address) return { server, address: address[0] };
  }
  throw new Error('the server ended before it gave its address');
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

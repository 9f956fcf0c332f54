import { callOperation, isOperation, operationNames, operations, type Refused } from '@panewright/contract';
import { EXIT, printRefusal, Usage } from '../exits.ts';
import { fonts } from '../fonts.ts';
import type { Io } from '../io.ts';
import { readJson, reason } from '../readFile.ts';

export interface CallOptions {
  readonly name: string;
  readonly input: string | undefined;
  readonly server: string | undefined;
}

const DEFAULT_SERVER = 'http://127.0.0.1:4750';

/** Any operation, its input as JSON; those that keep or find jobs are asked of the running server. */
export async function call({ name, input, server }: CallOptions, io: Io): Promise<number> {
  const value = input === undefined ? { ok: true as const, value: {} } : await readJson(input);
  if (!value.ok) return printRefusal(value.refusal, true, io);
  if (isOperation(name) && operations[name].needs === 'store')
    return callServer(`${server ?? DEFAULT_SERVER}/api/${name}`, value.value, io);
  const result = await callOperation(name, value.value, { fonts });
  if (!result.ok) return printRefusal(result.refusal, true, io);
  io.out(`${JSON.stringify(result.value)}\n`);
  return EXIT.fine;
}

async function callServer(address: string, input: unknown, io: Io): Promise<number> {
  let response: Response;
  try {
    response = await io.fetch(address, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify(input),
    });
  } catch (error) {
    throw new Usage(
      `No server answers at ${address} (${reason(error)}). Start it with npm start, or name it with --server.`,
    );
  }
  const body: unknown = await response.json();
  if (response.ok) {
    io.out(`${JSON.stringify(body)}\n`);
    return EXIT.fine;
  }
  if (typeof body === 'object' && body !== null && 'refusal' in body)
    return printRefusal((body as Refused).refusal, true, io);
  throw new Error(`The server at ${address} answered ${response.status}.`);
}

export const operationList = (): string =>
  `${operationNames.map((name) => `  ${name.padEnd(18)} ${operations[name].summary}`).join('\n')}\n`;

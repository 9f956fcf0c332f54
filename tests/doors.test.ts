import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { callOperation, httpAnswer, memoryStore, operationNames, operations } from '@panewright/contract';
import { fonts, inProcess, makeServer } from '@panewright/server';
import { expect, test } from 'vitest';
import { runCli } from './cliRun.ts';
import { temporaryFolder, ticking } from './temporary.ts';

type Door = (name: string, input: unknown) => Promise<unknown>;

const folder = temporaryFolder();

function directly(): Door {
  const ports = memoryStore(ticking());
  return async (name, input) => {
    const { body } = httpAnswer(await callOperation(name, input, { ...ports, fonts }));
    return JSON.parse(JSON.stringify(body));
  };
}

function server() {
  return makeServer({ ports: memoryStore(ticking()), compute: inProcess });
}

function overHttp(): Door {
  const door = server();
  return async (name, input) => {
    const headers = { host: 'localhost', 'content-type': 'application/json' };
    return (
      await door.inject({ method: 'POST', url: `/api/${name}`, headers, payload: JSON.stringify(input) })
    ).json();
  };
}

/** The command line; what it asks of a server goes to one that opens no port. */
function onTheCommandLine(): Door {
  const door = server();
  const fetch = async (address: string | URL | Request, init?: RequestInit) => {
    const { pathname, host } = new URL(String(address));
    const headers = { host, 'content-type': 'application/json' };
    const answer = await door.inject({ method: 'POST', url: pathname, headers, payload: String(init?.body) });
    return new Response(answer.body, { status: answer.statusCode });
  };
  return async (name, input) => {
    const path = join(folder, 'input.json');
    writeFileSync(path, JSON.stringify(input));
    const { out } = await runCli(['call', name, path], { fetch });
    return JSON.parse(out);
  };
}

const doors = { directly: directly(), overHttp: overHttp(), onTheCommandLine: onTheCommandLine() };

// Once with nothing kept yet, once more with what the first round has kept: refusals and answers alike.
for (const round of ['first', 'second'])
  test.each(operationNames)(`${round} round: %s answers alike at every door`, async (name) => {
    const { example, output } = operations[name];
    const [direct, http, cli] = await Promise.all(Object.values(doors).map((door) => door(name, example)));
    expect(http).toEqual(direct);
    expect(cli).toEqual(direct);
    if (typeof direct === 'object' && direct !== null && 'refusal' in direct) {
      expect(direct).toMatchObject({ say: { what: expect.stringMatching(/\w/) } });
      expect(operations[name].needs).toBe('store');
    } else {
      expect(output.safeParse(direct).error).toBeUndefined();
    }
  });

test.each([
  ['nothing', {}, 'OPERATION_UNKNOWN'],
  ['plan', {}, 'INPUT_INVALID'],
  ['plan', { job: { format: 'panewright.job', version: 9 } }, 'DOCUMENT_NEWER'],
  ['openJob', { id: 'none' }, 'JOB_NOT_FOUND'],
])('%s of %j is refused as %s at every door', async (name, input, code) => {
  const direct = await doors.directly(name, input);
  expect(direct).toMatchObject({ refusal: { code } });
  expect(await doors.onTheCommandLine(name, input)).toEqual(direct);
  // HTTP knows its paths before it knows operations.
  if (code !== 'OPERATION_UNKNOWN') expect(await doors.overHttp(name, input)).toEqual(direct);
});

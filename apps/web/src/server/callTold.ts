import type {
  OperationInput,
  OperationName,
  OperationOutput,
  Refused as RefusedBody,
  WorkStage,
} from '../contract.ts';
import { spoken } from '../text/useWords.ts';
import { Refused, type Told } from './server.ts';

/** One operation over HTTP that tells how far it is: lines of JSON, the answer in the last of them. */
export async function callTold<N extends OperationName>(
  name: N,
  input: OperationInput<N>,
  signal: AbortSignal,
  told: Told,
): Promise<OperationOutput<N>> {
  const response = await fetch(`/api/${name}`, {
    method: 'POST',
    headers: {
      'content-type': 'application/json',
      'accept-language': spoken().language,
      accept: 'application/x-ndjson',
    },
    body: JSON.stringify(input),
    signal,
  });
  const lines = response.headers.get('content-type')?.startsWith('application/x-ndjson') ?? false;
  const { status, body } = lines
    ? await lastLine(response, told)
    : { status: response.status, body: await response.json() };
  if (status === 200) return body as OperationOutput<N>;
  if (typeof body === 'object' && body !== null && 'refusal' in body) throw new Refused(body as RefusedBody);
  throw new Error(`${name}: ${status}`);
}

interface Answer {
  readonly status: number;
  readonly body: unknown;
}

async function lastLine(response: Response, told: Told): Promise<Answer> {
  const reader = response.body!.pipeThrough(new TextDecoderStream()).getReader();
  let pending: string[] = [];
  for (;;) {
    const { value, done } = await reader.read();
    if (done) break;
    const [first = '', ...more] = value.split('\n');
    pending.push(first);
    for (const next of more) {
      const line = JSON.parse(pending.join('')) as
        | Answer
        | {
            readonly done: number;
            readonly of: number;
            readonly stage?: WorkStage;
          };
      pending = [next];
      if ('status' in line) return line;
      told(line.done, line.of, line.stage);
    }
  }
  throw new Error('the answer broke off');
}

import { PassThrough } from 'node:stream';
import type { FastifyReply, FastifyRequest } from 'fastify';
import type { Answer, Told } from '../compute/compute.ts';

/** Lines of JSON: how far the work is, as often as it is told, and in the last line the answer. */
const LINES = 'application/x-ndjson';

/** Whether the other end wants to be told how far the work is. */
export const wantsLines = ({ headers }: FastifyRequest): boolean =>
  (headers.accept ?? '').split(',').some((one) => one.trim().startsWith(LINES));

/**
 * Answers in lines: `{"done":3,"of":12,"stage":"plan"}` …, then `{"status":200,"body":…}`. The status of HTTP itself is sent before the
 * work is begun, so it is 200; that of the answer is in the last line.
 */
export function streamAnswer(
  reply: FastifyReply,
  work: (told: Told) => Promise<Answer>,
  fault: (error: Error) => Answer,
): FastifyReply {
  const lines = new PassThrough();
  // Nothing more is written once the other end has gone.
  const write = (line: string) => void (lines.destroyed || lines.write(`${line}\n`));
  const told: Told = (done, of, stage) => write(JSON.stringify({ done, of, stage }));
  work(told)
    .catch(fault)
    .then(({ status, body }) => {
      write(`{"status":${status},"body":${body}}`);
      lines.end();
    });
  return reply.type(`${LINES}; charset=utf-8`).header('cache-control', 'no-store').send(lines);
}

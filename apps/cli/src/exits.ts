import { doorAnswers, inOne, makeShow, type Refusal, refusedBody, sayRefusal } from '@panewright/contract';
import type { Io } from './io.ts';

/** Exit codes: fine, bad input, part of the job cannot be made as it stands, a fault of ours. */
export const EXIT = { fine: 0, badInput: 2, stops: 3, fault: 70 } as const;

/** The command was called in a way that cannot be meant. */
export class Usage extends Error {
  override readonly name = 'Usage';
}

/** Prints a refusal, as data where asked so; gives the exit code. */
export function printRefusal(refusal: Refusal, json: boolean, io: Io): number {
  if (json) io.out(`${JSON.stringify(refusedBody(refusal))}\n`);
  else io.err(`${inOne(sayRefusal(refusal, makeShow({ units: 'mm' })))}\n`);
  return doorAnswers[refusal.code].exit;
}

import type { Result } from '@panewright/quantity';
import { sayRefusal } from './answers/answers.ts';
import { makeShow } from './answers/show.ts';
import type { Sentences } from './answers/words.ts';
import { doorAnswers, type Refusal } from './refusal.ts';

/** What a door says instead of an output: the refusal as data and in words. */
export interface Refused {
  readonly refusal: Refusal;
  readonly say: Sentences;
}

export const refusedBody = (refusal: Refusal): Refused => ({
  refusal,
  say: sayRefusal(refusal, makeShow({ units: 'mm' })),
});

/** A result as HTTP has it. */
export function httpAnswer(result: Result<unknown, Refusal>): {
  readonly status: number;
  readonly body: unknown;
} {
  if (result.ok) return { status: 200, body: result.value };
  return { status: doorAnswers[result.refusal.code].status, body: refusedBody(result.refusal) };
}

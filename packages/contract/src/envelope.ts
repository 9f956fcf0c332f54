import type { Result } from '@panewright/quantity';
import { sayRefusal } from './answers/answers.ts';
import { english } from './answers/english/english.ts';
import { makeShow } from './answers/show.ts';
import type { Messages, Sentences } from './answers/words.ts';
import { doorAnswers, type Refusal } from './refusal.ts';

/** What a door says instead of an output: the refusal as data and in words. */
export interface Refused {
  readonly refusal: Refusal;
  readonly say: Sentences;
}

export const refusedBody = (refusal: Refusal, messages: Messages = english): Refused => ({
  refusal,
  say: sayRefusal(refusal, makeShow({ units: 'mm', language: messages.language }), messages),
});

/** A result as HTTP has it. */
export function httpAnswer(
  result: Result<unknown, Refusal>,
  messages: Messages = english,
): {
  readonly status: number;
  readonly body: unknown;
} {
  if (result.ok) return { status: 200, body: result.value };
  return { status: doorAnswers[result.refusal.code].status, body: refusedBody(result.refusal, messages) };
}

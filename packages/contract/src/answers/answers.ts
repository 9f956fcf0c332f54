import type { ChoiceReason, HoldGap, ThickGlassAnswer } from '@panewright/design';
import type { TraceQuestion } from '@panewright/photo';
import type { Refusal } from '../refusal.ts';
import { english } from './english/english.ts';
import type { Show } from './show.ts';
import type { ChoiceShow, Messages, Sentences } from './words.ts';

/** What the page and the command line say. They speak English; what a workshop hangs on the wall has its own language. */
export const messages = { en: english } as const satisfies Readonly<Record<string, Messages>>;

/** A refusal in words. */
export function sayRefusal(refusal: Refusal, show: Show): Sentences {
  const word = messages.en.refusals[refusal.code] as (refusal: Refusal, show: Show) => Sentences;
  return word(refusal, show);
}

/** A question about a traced outline, in words. */
export function sayQuestion(question: TraceQuestion): string {
  const word = messages.en.traceQuestions[question.code] as (question: TraceQuestion) => string;
  return word(question);
}

/** Why a pair of magnets was turned down, in words. */
export function sayReason(reason: ChoiceReason, words: ChoiceShow): string {
  const word = messages.en.choices.reasons[reason.code] as (
    reason: ChoiceReason,
    words: ChoiceShow,
  ) => string;
  return word(reason, words);
}

/** What would hold instead, in words. */
export function sayInstead(answer: ThickGlassAnswer, words: ChoiceShow): string {
  const word = messages.en.choices.instead[answer.code] as (
    answer: ThickGlassAnswer,
    words: ChoiceShow,
  ) => string;
  return word(answer, words);
}

/** Why two hold points are as far apart as they are, in one sentence. `obstruction`: what is in the way, by name. */
export const sayGap = (gap: HoldGap, obstruction: string, show: Show): string =>
  messages.en.gaps[gap.reason](gap, obstruction, show);

/** All of it as running text. */
export const inOne = ({ what, why, do: doThis }: Sentences): string =>
  [what, why, doThis].filter((part) => part !== '').join(' ');

import type { TraceQuestion } from '@panewright/photo';
import type { Refusal } from '../refusal.ts';
import { english } from './english/english.ts';
import type { Show } from './show.ts';
import type { Messages, Sentences } from './words.ts';

/** Every language there are sentences in. */
export const messages = { en: english } as const satisfies Readonly<Record<string, Messages>>;
export type Language = keyof typeof messages;

/** A refusal in words. */
export function sayRefusal(refusal: Refusal, show: Show, language: Language = 'en'): Sentences {
  const word = messages[language].refusals[refusal.code] as (refusal: Refusal, show: Show) => Sentences;
  return word(refusal, show);
}

/** A question about a traced outline, in words. */
export function sayQuestion(question: TraceQuestion, language: Language = 'en'): string {
  const word = messages[language].traceQuestions[question.code] as (question: TraceQuestion) => string;
  return word(question);
}

/** All of it as running text. */
export const inOne = ({ what, why, do: doThis }: Sentences): string =>
  [what, why, doThis].filter((part) => part !== '').join(' ');

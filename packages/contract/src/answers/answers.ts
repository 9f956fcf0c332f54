import type { ChoiceReason, HoldGap, ThickGlassAnswer, WrongWay } from '@panewright/design';
import type { TraceQuestion } from '@panewright/photo';
import type { Issue } from '../document/issue.ts';
import type { Refusal } from '../refusal.ts';
import { english } from './english/english.ts';
import type { Show } from './show.ts';
import type { ChoiceShow, Messages, Sentences } from './words.ts';

// Each says it in English, or in the messages of the language given. `show` is to be of the same language.

/** A refusal in words. */
export function sayRefusal(refusal: Refusal, show: Show, messages: Messages = english): Sentences {
  const word = messages.refusals[refusal.code] as (refusal: Refusal, show: Show) => Sentences;
  return word(refusal, show);
}

/** What is wrong with a document, said at the field that stands for the place. */
export function sayIssueAtField(issue: Issue, show: Show, messages: Messages = english): string {
  const word = messages.issues[issue.kind] as (issue: Issue, show: Show) => string;
  const said = word({ ...issue, path: [] } as Issue, show);
  const { whole, here } = messages.document;
  return said.startsWith(`${whole} `) ? `${here}${said.slice(whole.length)}` : said;
}

/** A question about a traced outline, in words. */
export function sayQuestion(question: TraceQuestion, messages: Messages = english): string {
  const word = messages.traceQuestions[question.code] as (question: TraceQuestion) => string;
  return word(question);
}

/** Why a pair of magnets was turned down, in words. */
export function sayReason(reason: ChoiceReason, words: ChoiceShow, messages: Messages = english): string {
  const word = messages.choices.reasons[reason.code] as (reason: ChoiceReason, words: ChoiceShow) => string;
  return word(reason, words);
}

/** What would hold instead, in words. */
export function sayInstead(
  answer: ThickGlassAnswer,
  words: ChoiceShow,
  messages: Messages = english,
): string {
  const word = messages.choices.instead[answer.code] as (
    answer: ThickGlassAnswer,
    words: ChoiceShow,
  ) => string;
  return word(answer, words);
}

/** Why two hold points are as far apart as they are, in one sentence. `obstruction`: what is in the way, by name. */
export const sayGap = (gap: HoldGap, obstruction: string, show: Show, messages: Messages = english): string =>
  messages.gaps[gap.reason](gap, obstruction, show);

/** A wrong way to put a panel of so many hold points on, and what would draw. */
export const sayWrongWay = (
  way: WrongWay,
  points: number,
  show: Show,
  messages: Messages = english,
): string => messages.wrongWay(way, points, show);

/** All of it as running text. */
export const inOne = ({ what, why, do: doThis }: Sentences): string =>
  [what, why, doThis].filter((part) => part !== '').join(' ');

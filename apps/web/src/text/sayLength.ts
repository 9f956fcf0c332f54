import { type LengthRefusal, sayLengthRefusal } from '../contract.ts';
import { spoken } from './useWords.ts';

/** Why a text is not a length, as a sentence. */
export function sayLength(refusal: LengthRefusal): string {
  const { words, messages } = spoken();
  const why = sayLengthRefusal(refusal, messages?.lengths);
  return refusal.text.trim() === ''
    ? words.fields.noLength(why)
    : words.fields.notLength(refusal.text.slice(0, 40), why);
}

import type { LengthRefusal } from '@panewright/quantity';
import { lengths } from './english/issues.ts';
import type { LengthWords } from './words.ts';

/** Why a text is not a length, as the end of a sentence. Apart from the others: a field says these while one is typed. */
export function sayLengthRefusal(refusal: LengthRefusal, words: LengthWords = lengths): string {
  const word = words[refusal.code] as (refusal: LengthRefusal) => string;
  return word(refusal);
}

import type { LengthRefusal } from '@panewright/quantity';
import { lengths } from './english/issues.ts';
import type { LengthWords } from './words.ts';

/** Apart from the other sentences: a field says these while a length is being typed. */
export const lengthWords = { en: lengths } as const satisfies Readonly<Record<string, LengthWords>>;

/** Why a text is not a length, as the end of a sentence that begins with the text. */
export function sayLengthRefusal(refusal: LengthRefusal, language: keyof typeof lengthWords = 'en'): string {
  const word = lengthWords[language][refusal.code] as (refusal: LengthRefusal) => string;
  return word(refusal);
}

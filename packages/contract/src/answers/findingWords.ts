import { findings as english } from './english/findings.ts';
import { findings as german } from './german/findings.ts';
import type { Language } from './show.ts';
import { findings as spanish } from './spanish/findings.ts';
import type { FindingWords } from './words.ts';

/** Findings go on the sheets, so they are said in every language of the sheets. */
export const findingWords: Readonly<Record<Language, FindingWords>> = {
  ...{ en: english, de: german, es: spanish },
};

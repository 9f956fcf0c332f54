import { factorText } from './correction.ts';
import type { SheetOptions } from './options.ts';
import type { Words } from './words.ts';

/** The printer's correction in words; none where none is set. */
export const correctionWords = ({ correction }: SheetOptions, words: Words): readonly string[] =>
  correction === undefined ? [] : [words.page.corrected(factorText(correction.x), factorText(correction.y))];

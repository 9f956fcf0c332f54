import { factorText } from './correction.ts';
import { figureText } from './figures.ts';
import type { SheetOptions } from './options.ts';
import type { Words } from './words.ts';

/** The printer's correction in words; none where none is set. */
export const correctionWords = ({ correction, language }: SheetOptions, words: Words): readonly string[] =>
  correction === undefined
    ? []
    : [
        words.page.corrected(
          ...([correction.x, correction.y].map((one) => figureText(factorText(one), language)) as [
            string,
            string,
          ]),
        ),
      ];

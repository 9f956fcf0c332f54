import type { Finding } from '@panewright/design';
import { findings } from './english/findings.ts';
import type { Show } from './show.ts';
import type { FindingWords, Sentences } from './words.ts';

/** A finding in the given words, its lengths in the units of `show`, which is of the same language. */
export function sayFindingIn(words: FindingWords, finding: Finding, show: Show): Sentences {
  const word = words[finding.code] as (finding: Finding, show: Show) => Sentences;
  return word(finding, show);
}

/** A finding, in English where no words are given. Apart from the other sentences: a page shows these at its first drawing. */
export const sayFinding = (finding: Finding, show: Show, words: FindingWords = findings): Sentences =>
  sayFindingIn(words, finding, show);

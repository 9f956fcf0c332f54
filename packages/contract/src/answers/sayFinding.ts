import type { Finding } from '@panewright/design';
import { findings } from './english/findings.ts';
import type { Show } from './show.ts';
import type { FindingWords, Sentences } from './words.ts';

/** Apart from the other sentences: a page shows these beside its first drawing. */
export const findingWords = { en: findings } as const satisfies Readonly<Record<string, FindingWords>>;

/** A finding in words, its lengths in the units of `show`. */
export function sayFinding(
  finding: Finding,
  show: Show,
  language: keyof typeof findingWords = 'en',
): Sentences {
  const word = findingWords[language][finding.code] as (finding: Finding, show: Show) => Sentences;
  return word(finding, show);
}

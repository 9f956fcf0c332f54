import { english } from './english/english.ts';
import { german } from './german/german.ts';
import type { Language } from './show.ts';
import { spanish } from './spanish/spanish.ts';
import type { Messages } from './words.ts';

/** Every language at once, for a door that answers in the one it is asked in. */
export const messagesOf: Readonly<Record<Language, Messages>> = { en: english, de: german, es: spanish };

/** The language that an Accept-Language header likes best of ours, RFC 9110, 12.5.4; English where it names none. */
export function languageOf(header: string | undefined): Language {
  const liked = (header ?? '').split(',').map((one) => {
    const [tag = '', ...parameters] = one.split(';').map((part) => part.trim().toLowerCase());
    const weight = parameters.find((part) => part.startsWith('q='));
    return { language: tag.split('-')[0]!, weight: weight === undefined ? 1 : Number(weight.slice(2)) };
  });
  const best = liked
    .filter(({ language, weight }) => Object.hasOwn(messagesOf, language) && weight > 0)
    .toSorted((a, b) => b.weight - a.weight)[0];
  return (best?.language as Language | undefined) ?? 'en';
}

import type { Language } from '../contract.ts';
import { english } from './english/english.ts';
import { messagesIn } from './messagesIn.ts';
import { useSpoken } from './useWords.ts';
import type { Words } from './words.ts';

/** Each language by its own name, and the way it is written. */
export const LANGUAGES: Readonly<Record<Language, { readonly name: string; readonly dir: 'ltr' | 'rtl' }>> = {
  en: { name: 'English', dir: 'ltr' },
  de: { name: 'Deutsch', dir: 'ltr' },
  es: { name: 'Español', dir: 'ltr' },
};

const NAME = 'panewright.language';
const isOurs = (text: string | null | undefined): text is Language =>
  typeof text === 'string' && Object.hasOwn(LANGUAGES, text);
const root = (tag: string): string => tag.toLowerCase().split('-')[0]!;

/** What was chosen in this browser, else the first of the reader's languages that is one of ours, else English. */
export function languageHere(): Language {
  try {
    const kept = localStorage.getItem(NAME);
    if (isOurs(kept)) return kept;
  } catch {
    // Storage may be closed to us; the browser's languages stand.
  }
  return navigator.languages.map(root).find(isOurs) ?? 'en';
}

async function wordsIn(language: Language): Promise<Words> {
  switch (language) {
    case 'de':
      return (await import('./german/german.ts')).german;
    case 'es':
      return (await import('./spanish/spanish.ts')).spanish;
    case 'en':
      return english;
  }
}

/** Turns the page to a language; where its words cannot be fetched, the page stays as it is. */
export async function speak(language: Language): Promise<void> {
  const [words, messages] = await Promise.all([wordsIn(language), messagesIn(language)]);
  const locale = navigator.languages.find((tag) => root(tag) === language) ?? language;
  const mark = new Intl.NumberFormat(locale).formatToParts(1.5).find(({ type }) => type === 'decimal')!.value;
  document.documentElement.lang = language;
  const { dir } = LANGUAGES[language];
  document.documentElement.dir = dir;
  useSpoken.setState({ language, locale, words, messages, mark, dir });
}

/** The same, and keeps the choice in this browser. */
export async function choose(language: Language): Promise<void> {
  await speak(language);
  try {
    localStorage.setItem(NAME, language);
  } catch {
    // The choice then lasts as long as the page.
  }
}

import { create } from 'zustand';
import type { Language, Messages } from '../contract.ts';
import { english } from './english/english.ts';
import type { Words } from './words.ts';

/** All that is said in one language. */
export interface Spoken {
  readonly language: Language;
  /** As `Intl` and the page's root have it: the language with the reader's own region, which shapes dates. */
  readonly locale: string;
  readonly words: Words;
  /** Sentences for findings and refusals. None: English, whose come with the files of script that say them. */
  readonly messages: Messages | undefined;
  /** What sets decimals apart. */
  readonly mark: string;
  readonly dir: 'ltr' | 'rtl';
}

/** The language shown. English comes with the page; another is fetched when it is chosen, see `speak`. */
export const useSpoken = create<Spoken>(() => ({
  language: 'en',
  locale: 'en',
  words: english,
  messages: undefined,
  mark: '.',
  dir: 'ltr',
}));

export const useWords = (): Words => useSpoken((state) => state.words);

/** For places outside of a component. */
export const spoken = (): Spoken => useSpoken.getState();
export const words = (): Words => spoken().words;

import type { SheetOptions } from './options.ts';
import { english } from './words/english.ts';
import { german } from './words/german.ts';
import { spanish } from './words/spanish.ts';
import type { Words } from './words.ts';

/** Languages the sheets are written in, by ISO 639-1. */
export type Language = 'en' | 'de' | 'es';

const WORDS: Readonly<Record<Language, Words>> = { en: english, de: german, es: spanish };

/** The sentences sheets are made with: those given, else those of the language, English where none is named. */
export const wordsOf = ({ words, language = 'en' }: Pick<SheetOptions, 'words' | 'language'>): Words =>
  words ?? WORDS[language];

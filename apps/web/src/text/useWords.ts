import { create } from 'zustand';
import { english } from './english/english.ts';
import type { Words } from './words.ts';

/** The language shown. English comes with the page; others are fetched when they are chosen. */
const useLanguage = create<{ readonly words: Words }>(() => ({ words: english }));

export const useWords = (): Words => useLanguage((state) => state.words);

/** For places outside of a component. */
export const words = (): Words => useLanguage.getState().words;

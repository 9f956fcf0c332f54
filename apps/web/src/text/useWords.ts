import { create } from 'zustand';
import { en, type Words } from './en.ts';

/** The language shown. A second language is added here, beside English. */
const useLanguage = create<{ readonly words: Words }>(() => ({ words: en }));

export const useWords = (): Words => useLanguage((state) => state.words);

/** For places outside of a component. */
export const words = (): Words => useLanguage.getState().words;

import type { SheetOptions } from './options.ts';
import { english } from './words/english.ts';
import type { Words } from './words.ts';

/** The sentences sheets are made with: those given, English else. */
export const wordsOf = ({ words }: Pick<SheetOptions, 'words'>): Words => words ?? english;

import type { english } from './english/english.ts';

/** The words of the page. Each language has a folder with the same files; one that lacks a word does not compile. */
export type Words = typeof english;

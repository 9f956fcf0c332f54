import type { english } from './words/english.ts';

/** Every sentence of the sheets, by sheet and by code. Another language fills the same shape. */
export type Words = typeof english;

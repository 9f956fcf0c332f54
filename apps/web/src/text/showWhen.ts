import { spoken } from './useWords.ts';

/** A moment as the reader's own clock and calendar have it. */
export const showWhen = (iso: string): string =>
  new Date(iso).toLocaleString(spoken().locale, { dateStyle: 'medium', timeStyle: 'short' });

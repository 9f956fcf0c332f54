/** A moment as the reader's own clock and calendar have it. */
export const showWhen = (iso: string): string =>
  new Date(iso).toLocaleString(undefined, { dateStyle: 'medium', timeStyle: 'short' });

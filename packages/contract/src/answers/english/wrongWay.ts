import { wrongWayWords } from '../wrongWayWords.ts';

/** A wrong way to put a panel on, in English. */
export const wrongWay = wrongWayWords({
  along: 'shifted along',
  half: 'turned half round',
  turned: (by: string) => `turned by ${by}`,
  side: 'turned over left for right',
  top: 'turned over top for bottom',
  over: (by: string) => `turned over and by ${by}`,
  shifted: ' and shifted along',
  tells: (way, drawn, all, push) => `${way}, ${drawn} of ${all} points still pull and ${push} push off`,
});

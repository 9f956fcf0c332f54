import type { KeptPattern } from '@panewright/design';

/** Every word a kept pattern may be found by: its name and notes, the job, the customer, the site, the openings. */
export function patternWords({ name, notes, from }: KeptPattern): string {
  const openings = from.openings.flatMap((one) => [one.id, one.name, one.place]);
  return folded([name, notes, from.jobName, from.customer, from.site.name, ...openings].join('\n'));
}

/** The terms of a search as they are looked for: each somewhere among a pattern's words, in any order, case or accent. */
export const searchTerms = (text: string): readonly string[] => folded(text).split(/\s+/u).filter(Boolean);

const folded = (text: string): string =>
  text.normalize('NFKD').replace(/\p{M}/gu, '').toLowerCase().normalize('NFC');

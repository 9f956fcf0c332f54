import type { Finding } from '@panewright/design';
import type { Show } from './show.ts';

/** What a language calls the places a finding may be of. */
export interface WhereTerms {
  readonly opening: string;
  readonly pattern: string;
  readonly job: string;
}

export interface WhereWords {
  /** The opening a finding is of, else its pattern, else the job. */
  readonly opening: (finding: Finding, show: Show) => string;
  /** The pattern a finding is of, else its opening, else the job. */
  readonly pattern: (finding: Finding, show: Show) => string;
}

/** How a finding's place is said, the same in every language; the terms are the language's own. */
export function whereWords(terms: WhereTerms): WhereWords {
  const ofOpening = ({ where }: Finding, show: Show) =>
    where.opening ? `${terms.opening} ${show.opening(where.opening)}` : null;
  const ofPattern = ({ where }: Finding) => (where.pattern ? `${terms.pattern} ${where.pattern}` : null);
  return {
    opening: (f, show) => ofOpening(f, show) ?? ofPattern(f) ?? terms.job,
    pattern: (f, show) => ofPattern(f) ?? ofOpening(f, show) ?? terms.job,
  };
}

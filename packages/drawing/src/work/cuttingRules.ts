import type { SheetInput } from '../options.ts';

/** What of a job's rules for cutting the hand has to heed. */
export interface CuttingRules {
  /** Where a cloth is cut in several lays and pieces must not be mixed between them; null where they may. */
  readonly together: 'panel' | 'place' | null;
  /** Every piece lies one way of its cloth. */
  readonly oneWay: boolean;
}

export function cuttingRules({ job, plan }: Pick<SheetInput, 'job' | 'plan'>): CuttingRules {
  const lays = plan.cutting?.lays ?? [];
  const several = new Set(lays.map(({ fabric }) => fabric)).size < lays.length;
  const kept = job.oneBatch === 'panel' || job.oneBatch === 'place' ? job.oneBatch : null;
  const notAll = plan.findings.some(({ code }) => code === 'SAME_WAY_GRAINS' || code === 'SAME_WAY_TOO_WIDE');
  return { together: several ? kept : null, oneWay: job.sameWay === true && !notAll };
}

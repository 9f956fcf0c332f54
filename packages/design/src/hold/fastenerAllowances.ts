import type { Catalogue } from '../document/catalogue.ts';
import type { Job } from '../document/job.ts';
import type { Finding } from '../plan/finding.ts';

/** Fasteners whose own allowance stands in place of the job's, once each: see choicesOf. */
export function fastenerAllowances(job: Job, { fasteners = [] }: Catalogue): readonly Finding[] {
  const fit = job.choices.fit.all;
  const used = new Set(
    job.openings.flatMap(({ choices }) => {
      const by = choices.hold?.by ?? job.choices.hold.by;
      return by?.kind === 'fastener' && !choices.fit ? [by.fastener] : [];
    }),
  );
  return fasteners
    .filter(({ id, beyond }) => used.has(id) && beyond !== fit)
    .map(({ id, name, beyond }) => ({
      severity: 'note',
      code: 'FASTENER_ALLOWANCE',
      where: { item: id },
      numbers: { fastener: name, beyond, fit },
    }));
}

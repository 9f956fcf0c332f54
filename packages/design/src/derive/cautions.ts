import type { Job } from '../document/job.ts';
import type { Finding, FindingCode } from '../plan/finding.ts';
import type { OpeningPlan } from '../plan/plan.ts';
import type { Made } from '../take-off/needs.ts';

/** The cautions this job calls for, once each; those that belong to one opening name it. Texts live at the doors. */
export function cautions(
  job: Job,
  openings: readonly OpeningPlan[],
  made: readonly Made[],
): readonly Finding[] {
  if (made.length === 0) return [];
  const all = (code: FindingCode, numbers: Finding['numbers'] = {}): Finding => ({
    severity: 'caution',
    code,
    where: {},
    numbers,
  });
  const one = (code: FindingCode, plan: OpeningPlan): Finding => ({
    severity: 'caution',
    code,
    where: { opening: plan.opening },
    numbers: {},
  });
  const vehicle = job.site.kind === 'camper' || job.site.kind === 'boat';
  const pulls = made.flatMap(({ hold }) => hold.openings.map(({ pull }) => pull?.touching ?? 0));
  const hot =
    made.some(({ panel }) => panel.edging.kind === 'hotCut') ||
    made.some(({ materials }) => materials.fabric.heatCut);
  return [
    ...openings.filter(({ exit }) => exit).map((plan) => one('EXIT_OPENING', plan)),
    ...openings.filter(({ driving }) => driving).map((plan) => one('REMOVE_BEFORE_DRIVING', plan)),
    ...(vehicle && !openings.some(({ driving }) => driving) ? [all('REMOVE_BEFORE_DRIVING')] : []),
    all('HOLD_IS_ESTIMATE'),
    all('MAGNETS_PINCH', { touching: Math.max(...pulls) }),
    all('MAGNETS_SWALLOWED'),
    all('MAGNETS_IMPLANTS'),
    ...(job.site.kind === 'boat' ? [all('MAGNETS_COMPASS')] : []),
    all('TAPE_DWELL'),
    all('SOLVENT_FIRE'),
    ...(hot ? [all('HOT_KNIFE_FUMES')] : []),
    all('HEAT_INSIDE'),
  ];
}

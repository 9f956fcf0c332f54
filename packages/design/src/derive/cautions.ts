import {
  compassDistance,
  implantDistance,
  type LooseMagnet,
  lastingLossLimit,
  magnetGrade,
} from '@panewright/magnets';
import type { Catalogue, Magnet } from '../document/catalogue.ts';
import type { Job } from '../document/job.ts';
import { bodyOf } from '../hold/holdOpening.ts';
import type { Finding } from '../plan/finding.ts';
import type { OpeningPlan } from '../plan/plan.ts';
import { type Made, magnetNeeds } from '../take-off/needs.ts';

/** The cautions this job calls for, once each; those that belong to one opening name it. Texts live at the doors. */
export function cautions(
  job: Job,
  openings: readonly OpeningPlan[],
  made: readonly Made[],
  catalogue: Catalogue,
): readonly Finding[] {
  if (made.length === 0) return [];
  return [
    ...openings.flatMap(ofOpening),
    ...driving(job),
    everywhere('HOLD_IS_ESTIMATE'),
    ...ofMagnets(job, made, catalogue),
    ...(made.some(usesTape) ? [everywhere('TAPE_DWELL'), everywhere('SOLVENT_FIRE')] : []),
    ...(made.some(({ materials }) => materials.holder.kind === 'steel') ? [everywhere('STEEL_EDGES')] : []),
    ...ofFasteners(made),
    ...(made.some(usesHeat) ? [everywhere('HOT_KNIFE_FUMES')] : []),
    everywhere('HEAT_INSIDE'),
  ];
}

type Plain =
  | 'HOLD_IS_ESTIMATE'
  | 'TAPE_DWELL'
  | 'SOLVENT_FIRE'
  | 'STEEL_EDGES'
  | 'CUPS_LET_GO'
  | 'HOT_KNIFE_FUMES'
  | 'HEAT_INSIDE'
  | 'MAGNETS_SWALLOWED'
  | 'REMOVE_BEFORE_DRIVING';

const everywhere = (code: Plain): Finding => ({ severity: 'caution', code, where: {}, numbers: {} });

function ofOpening({ opening, exit, driving: seen }: OpeningPlan): Finding[] {
  const where = { opening };
  return [
    ...(exit ? [{ severity: 'caution', code: 'EXIT_OPENING', where, numbers: {} } as const] : []),
    ...(seen ? [{ severity: 'caution', code: 'REMOVE_BEFORE_DRIVING', where, numbers: {} } as const] : []),
  ];
}

/** A vehicle or vessel moves: every panel comes off first, whichever opening is marked as the driver's. */
function driving(job: Job): Finding[] {
  const moves = job.site.kind === 'camper' || job.site.kind === 'boat';
  return moves ? [everywhere('REMOVE_BEFORE_DRIVING')] : [];
}

const usesTape = ({ materials }: Made): boolean => materials.holder.kind !== 'fastener';

/** Cups that lose their air, and holes in a frame. */
function ofFasteners(made: readonly Made[]): Finding[] {
  const used = made.flatMap(({ pattern, hold, materials: { holder } }) =>
    holder.kind === 'fastener'
      ? [{ fastener: holder.fastener, sets: pattern.members.length * hold.points.length }]
      : [],
  );
  const fixings = used.reduce((sum, { fastener, sets }) => sum + sets * fastener.fixings, 0);
  return [
    ...(used.some(({ fastener }) => fastener.kind === 'suctionCup') ? [everywhere('CUPS_LET_GO')] : []),
    ...(fixings > 0
      ? [{ severity: 'caution', code: 'FIXINGS_IN_FRAME', where: {}, numbers: { fixings } } as const]
      : []),
  ];
}

const usesHeat = ({ panel, materials }: Made): boolean =>
  panel.edging.kind === 'hotCut' || materials.fabric.heatCut;

/** Pinching, swallowing, implants, compasses and heat, for the magnets this job has. */
function ofMagnets(job: Job, made: readonly Made[], catalogue: Catalogue): Finding[] {
  const touching = made.flatMap(({ hold }) => hold.openings.map(({ pull }) => pull?.touching ?? 0));
  const counted = [...magnetNeeds(made)].flatMap(([id, { amount }]) => {
    const magnet = catalogue.magnets.find((item) => item.id === id);
    return magnet ? [{ magnet, count: amount }] : [];
  });
  const loose = counted.flatMap(looseOf);
  if (loose.length === 0) return [];
  return [
    { severity: 'caution', code: 'MAGNETS_PINCH', where: {}, numbers: { touching: Math.max(...touching) } },
    everywhere('MAGNETS_SWALLOWED'),
    ...distances(job, loose),
    ...counted.flatMap(({ magnet }) => heatOf(magnet, job)),
  ];
}

function looseOf({ magnet, count }: { readonly magnet: Magnet; readonly count: number }): LooseMagnet[] {
  const grade = magnetGrade(magnet.grade);
  if (!grade.ok) return [];
  return Array.from({ length: count }, () => ({
    magnet: bodyOf(magnet),
    remanence: grade.value.remanence.high,
  }));
}

function distances(job: Job, loose: readonly LooseMagnet[]): Finding[] {
  const implants = implantDistance(loose);
  const found: Finding[] = implants.ok
    ? [{ severity: 'caution', code: 'MAGNETS_IMPLANTS', where: {}, numbers: { distance: implants.value } }]
    : [];
  if (job.site.kind !== 'boat') return found;
  const steering = compassDistance(loose, 'steering');
  const standard = compassDistance(loose, 'standard');
  if (steering.ok && standard.ok)
    found.push({
      severity: 'caution',
      code: 'MAGNETS_COMPASS',
      where: {},
      numbers: { steering: steering.value, standard: standard.value },
    });
  return found;
}

function heatOf(magnet: Magnet, job: Job): Finding[] {
  const grade = magnetGrade(magnet.grade);
  if (!grade.ok) return [];
  const { limit } = lastingLossLimit(bodyOf(magnet), grade.value);
  const { hottest } = job.choices.weather;
  if (limit >= hottest) return [];
  return [
    {
      severity: 'doubt',
      code: 'HEAT_WEAKENS_MAGNETS',
      where: { item: magnet.id },
      numbers: { magnet: magnet.name, limit, label: grade.value.labelLimit, hottest },
    },
  ];
}

import type { Catalogue } from '../document/catalogue.ts';
import type { Job } from '../document/job.ts';
import type { Finding, FindingNumbers } from '../plan/finding.ts';
import type { Plan } from '../plan/plan.ts';
import { lately } from './lately.ts';
import { panelHeld } from './panelHeld.ts';
import { choiceInputOf, thickGlassInputOf } from './panelQuestion.ts';
import { type ThickGlassAnswer, thickGlassAnswers } from './thickGlass.ts';

/**
 * What would hold each panel that its chosen magnets cannot hold, worked out for that panel: with the catalogue's pairs,
 * larger magnets, steel on the frame, other fasteners.
 *
 * @source as thickGlassAnswers
 */
export function holdProposals(plan: Plan, job: Job, catalogue: Catalogue): readonly Finding[] {
  const failing = plan.findings.flatMap((one) =>
    one.severity === 'stop' && (one.code === 'PULL_TOO_WEAK' || one.code === 'PULL_REFUSED')
      ? (one.where.opening ?? [])
      : [],
  );
  const panels = failing.filter((opening, k) => {
    const serves = (id: string) =>
      plan.patterns.find(({ members }) => members.some((one) => one.opening === id));
    return failing.findIndex((other) => serves(other) === serves(opening)) === k;
  });
  return panels.slice(0, MOST_PANELS).flatMap((opening): Finding[] => {
    const numbers = answersFor({ plan, job, catalogue, opening });
    if (!numbers || Object.keys(numbers).length === 0) return [];
    return [{ severity: 'note', code: 'HOLD_PROPOSAL', where: { opening }, numbers }];
  });
}

/** Each takes a second; of a panel past these it can be asked. */
const MOST_PANELS = 2;

interface Asked {
  readonly plan: Plan;
  readonly job: Job;
  readonly catalogue: Catalogue;
  readonly opening: string;
}

/** Asked again of the same panel in the same weather, as on every save, the answer is the one before. */
const answersFor = lately(
  ({ plan, catalogue, opening }: Asked) => {
    const held = panelHeld(plan, catalogue, opening);
    if (!held.ok) return opening;
    const { panel, hold, opening: own } = held.value;
    const { magnets, steelStrips, fasteners, habits } = catalogue;
    return JSON.stringify([
      ...[own.choices, own.glazing, own.shape?.outline, panel.finished, hold.points],
      ...[magnets, steelStrips, fasteners, habits],
    ]);
  },
  ({ plan, job, catalogue, opening }): FindingNumbers['HOLD_PROPOSAL'] | null => {
    const held = panelHeld(plan, catalogue, opening);
    if (!held.ok) return null;
    const flange = held.value.opening.glazing.flange ?? 0;
    const choice = choiceInputOf(held.value, job, catalogue, { steel: [], hand: [], flange });
    const { fasteners = [] } = catalogue;
    const asked = thickGlassInputOf(held.value, catalogue, choice, flange, fasteners);
    return numbersOf(thickGlassAnswers(asked), catalogue);
  },
);

function numbersOf(
  answers: readonly ThickGlassAnswer[],
  { magnets, fasteners = [] }: Catalogue,
): FindingNumbers['HOLD_PROPOSAL'] {
  const magnet = (id: string) => magnets.find((one) => one.id === id)?.name ?? id;
  let found: FindingNumbers['HOLD_PROPOSAL'] = {};
  for (const answer of answers) {
    switch (answer.code) {
      case 'CATALOGUE_PAIR': {
        const { outside, inside, points, margin } = answer.choice;
        const ratio = margin === 'unloaded' ? {} : { margin };
        found = { ...found, outside: magnet(outside), inside: magnet(inside), points, ...ratio };
        break;
      }
      case 'LARGER_DISCS': {
        const { points } = answer.choice;
        found = { ...found, discs: answer.magnet.name, discPoints: points, discPocket: answer.pocket };
        break;
      }
      case 'BLOCKS': {
        const { points } = answer.choice;
        found = { ...found, blocks: answer.magnet.name, blockPoints: points, blockPocket: answer.pocket };
        break;
      }
      case 'STEEL_ON_FRAME': {
        const { width, thickness } = answer.steel;
        const strip = `${width} × ${thickness} mm`;
        found = { ...found, steel: strip, steelMagnet: magnet(answer.magnet), steelPoints: answer.points };
        break;
      }
      // Of fasteners the first that holds, or the first to be tried.
      case 'OTHER_FASTENER':
        if (found.fastener === undefined)
          found = { ...found, fastener: nameOf(answer.fastener, fasteners), fastenerPoints: answer.points };
        break;
      case 'FASTENER_TO_BE_TRIED':
        if (found.toTry === undefined)
          found = { ...found, toTry: nameOf(answer.fastener, fasteners), toTryPull: answer.pullNeeded };
    }
  }
  return found;
}

const nameOf = (id: string, list: NonNullable<Catalogue['fasteners']>): string =>
  list.find((one) => one.id === id)?.name ?? id;

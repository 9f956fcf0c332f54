import type { Outline, Point } from '@panewright/geometry';
import { remember, sameEntries } from '../derive/remember.ts';
import type { PanelPlan } from '../plan/plan.ts';
import { lately } from './lately.ts';
import { type Cavity, cavityOf, patchAt } from './pocket.ts';

/** A patch as sewn and the room it leaves a magnet; null where the panel leaves none. */
export interface SewnPocket {
  readonly pocket: Outline | null;
  readonly cavity: Cavity | null;
}

interface At {
  readonly at: Point;
  readonly inward: number;
}

interface Sewing {
  readonly panel: PanelPlan;
  readonly seam: number;
}

/**
 * The pocket of a panel at one foot. Where a foot stays while others move, or another magnet is chosen, its pocket is the
 * one found before.
 */
export const sewnPocket = (panel: PanelPlan, { at, inward }: At, seam: number): SewnPocket =>
  pocketsOf(panel.finished, { panel, seam }, ignore)({ at, inward });

const pocketsOf = remember(
  (_finished: Outline, sewing: Sewing) =>
    lately(
      ({ at, inward }: At) => `${at.x} ${at.y} ${inward}`,
      (foot: At) => sewn(foot, sewing),
    ),
  (a, b) => sameEntries(shapedBy(a), shapedBy(b)),
);

/** What a pocket depends on besides its foot. */
const shapedBy = ({ panel, seam }: Sewing): readonly unknown[] => [
  panel.cut,
  panel.band,
  panel.edging.kind,
  panel.choices.hold.pocket,
  seam,
];

function sewn({ at, inward }: At, { panel, seam }: Sewing): SewnPocket {
  // A bound panel's patch is cut flush with its cloth, under the binding; else it ends at the finished edge.
  const trim = panel.edging.kind === 'binding' ? panel.cut : panel.finished;
  const pocket = patchAt(trim, at, inward, panel.choices.hold.pocket);
  const cavity = pocket && cavityOf(pocket, panel.band ?? panel.finished, at, inward, seam);
  return { pocket, cavity };
}

/** A pocket finds nothing to say. */
const ignore = () => {};

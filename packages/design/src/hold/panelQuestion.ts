import { invert, moveOutline, movePoint } from '@panewright/geometry';
import type { Catalogue } from '../document/catalogue.ts';
import type { Fastener } from '../document/fasteners.ts';
import type { Job } from '../document/job.ts';
import { MAGNET_DENSITY, magnetVolume, panelMass } from '../panels/panelMass.ts';
import type { HoldPoint } from '../plan/plan.ts';
import { MOST_POCKET } from './apartFindings.ts';
import type { ChoiceInput } from './choosing.ts';

import { EASE, TAPE_MARGIN } from './holdDetails.ts';
import { GRAVITY } from './holdOpening.ts';
import type { HandPlaced } from './layout.ts';
import type { PanelHeld } from './panelHeld.ts';
import { CROWDED, centres, keepOuts } from './panelLayout.ts';
import { patchAt } from './pocket.ts';
import { runsOf } from './runs.ts';
import type { SteelItem } from './steelStrength.ts';
import type { ThickGlassInput } from './thickGlass.ts';

/** What a panel may be held by, besides the catalogue's magnets, and what stands by hand. */
export interface QuestionAbout {
  readonly steel: readonly SteelItem[];
  readonly hand: readonly HandPlaced[];
  readonly flange: number;
}

/** A panel of a plan as `choosing` takes it: its own gap, load, layout rules and pockets; asked is the panel's margin as a whole. */
export function choiceInputOf(
  held: PanelHeld,
  job: Job,
  catalogue: Catalogue,
  { steel, hand, flange }: QuestionAbout,
): ChoiceInput {
  const { panel, pattern, opening, sections, place } = held;
  const { pocketSeam, patternTolerance, windMargin } = catalogue.habits;
  const members = pattern.members.map((member) => ({
    opening: job.openings.find(({ id }) => id === member.opening)!,
  }));
  return {
    magnets: catalogue.magnets,
    steel,
    gap: { corner: sections.corner.gap, edge: sections.edge.gap },
    hottest: opening.choices.weather.hottest,
    friction: held.friction,
    load: held.load,
    weightOf: weightOf(held),
    inOpening: (centre) => movePoint(place, centre as Parameters<typeof movePoint>[1]),
    placing: {
      rim: panel,
      spacing: panel.choices.hold.spacing,
      upTo: panel.choices.hold.upTo,
      zones: keepOuts(pattern, members),
      centreOf: centres(panel, runsOf(panel), pocketSeam),
      apart: CROWDED * panel.choices.hold.pocket,
      hand,
      alike: patternTolerance,
    },
    pockets: pocketsOf(held, catalogue, flange, null) ?? [],
    asked: windMargin,
    marginOf: 'wholePanel',
  };
}

/** With patches and magnets of another size than those of the plan. */
function weightOf({ panel, materials }: PanelHeld): NonNullable<ChoiceInput['weightOf']> {
  const bare = panelMass(panel, [], materials).value;
  return (points, outside, pocket = panel.choices.hold.pocket) => {
    const each = outside
      ? (pocket ** 2 / 1e6) * materials.fabric.mass + magnetVolume(outside) * MAGNET_DENSITY
      : 0;
    return ((bare + points * each) / 1000) * GRAVITY;
  };
}

/** One hold point of each pocket piece: what a pair fits in one, it fits in all of its like. */
function kindsOf(points: readonly HoldPoint[]): readonly HoldPoint[] {
  return points.filter((point, k) => points.findIndex((one) => one.pocketPiece === point.pocketPiece) === k);
}

/** The pockets a pair must meet in, as sewn or with a patch of another size; null where the panel leaves none of that size. */
function pocketsOf(
  { panel, hold, opening, place }: PanelHeld,
  { habits }: Catalogue,
  flange: number,
  size: number | null,
): ChoiceInput['pockets'] | null {
  if (!opening.shape) return [];
  const glass = moveOutline(invert(place), opening.shape.outline);
  const trim = panel.edging.kind === 'binding' ? panel.cut : panel.finished;
  const pockets: ChoiceInput['pockets'][number][] = [];
  for (const { pocket: sewn, edgePoint: foot, inward } of kindsOf(hold.points)) {
    if (!sewn) continue;
    const pocket = size === null ? sewn : patchAt(trim, foot, inward, size);
    if (!pocket) return null;
    const room = panel.band ?? panel.finished;
    const seams = { room, seam: habits.pocketSeam, ease: EASE };
    pockets.push({
      place: { pocket, foot, inward },
      ...seams,
      glass,
      tapeMargin: habits.tapeMargin ?? TAPE_MARGIN,
      flange,
    });
  }
  return pockets;
}

/** The same panel as `thickGlassAnswers` takes it. A strip on the frame has cloth and film between it and the magnet. */
export function thickGlassInputOf(
  held: PanelHeld,
  catalogue: Catalogue,
  choice: ChoiceInput,
  flange: number,
  fasteners: readonly Fastener[],
): ThickGlassInput {
  const { fabric, wrapFilm } = held.materials;
  return {
    choice,
    pocketOf: (size) => pocketsOf(held, catalogue, flange, size),
    mostPocket: catalogue.habits.mostPocket ?? MOST_POCKET,
    frameGap: fabric.thickness + wrapFilm.thickness,
    fasteners,
  };
}

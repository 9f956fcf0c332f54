import { movePoint, type Rigid } from '@panewright/geometry';
import { ok, type Result, refuse } from '@panewright/quantity';
import { type Materials, materialsOf } from '../derive/materials.ts';
import type { Catalogue } from '../document/catalogue.ts';
import type { HoldOpening, HoldPlan, OpeningPlan, PanelPlan, PatternPlan, Plan } from '../plan/plan.ts';
import { runOfOne } from './heldOtherwise.ts';
import { clothOf } from './holdDetails.ts';
import { behindGlass, frictionOf, type HoldingRefusal, holdingStrength } from './holding.ts';
import type { HeldPoint, PanelLoad, Range, Strength } from './margins.ts';
import { type SectionInput, type StackSection, stackSection } from './stackSection.ts';

/** Standard acceleration of free fall, m/s² (exact by definition). */
const GRAVITY = 9.80665;

/** One opening's panel as the plan holds it, with all that questions about its hold are asked of. */
export interface PanelHeld {
  readonly opening: OpeningPlan;
  readonly pattern: PatternPlan;
  readonly panel: PanelPlan;
  readonly hold: HoldPlan;
  readonly own: HoldOpening;
  readonly materials: Materials;
  /** From the pattern's frame to the opening's. */
  readonly place: Rigid;
  readonly load: PanelLoad;
  readonly friction: Range;
  readonly sections: { readonly corner: StackSection; readonly edge: StackSection };
}

export type PanelHeldRefusal =
  | { readonly code: 'OPENING_UNKNOWN'; readonly opening: string; readonly known: readonly string[] }
  /** It has no panel or no hold points: a finding of the plan says why. */
  | { readonly code: 'OPENING_NOT_HELD'; readonly opening: string };

/**
 * The panel of one opening out of a plan, with its load and the sections through its stack.
 *
 * @refuses OPENING_UNKNOWN, OPENING_NOT_HELD
 * @source as stackSection; weight is mass times the standard acceleration of free fall
 */
export function panelHeld(plan: Plan, catalogue: Catalogue, id: string): Result<PanelHeld, PanelHeldRefusal> {
  const opening = plan.openings.find((one) => one.opening === id);
  if (!opening)
    return refuse({ code: 'OPENING_UNKNOWN', opening: id, known: plan.openings.map((one) => one.opening) });
  const pattern = plan.patterns.find(({ members }) => members.some((member) => member.opening === id));
  const panel = plan.panels.find((one) => one.pattern === pattern?.pattern);
  const hold = plan.hold.find((one) => one.pattern === pattern?.pattern);
  const own = hold?.openings.find((one) => one.opening === id);
  const materials = panel ? materialsOf(panel.choices, catalogue, id, () => {}) : null;
  if (!pattern || !panel || !hold || !own || !materials || hold.points.length === 0)
    return refuse({ code: 'OPENING_NOT_HELD', opening: id });
  const { place } = pattern.members.find((member) => member.opening === id)!;
  const { wind, gustFactor } = opening.choices.weather;
  return ok({
    opening,
    pattern,
    panel,
    hold,
    own,
    materials,
    place,
    load: {
      ...clothOf(catalogue.habits),
      area: panel.area.value,
      weight: (panel.mass.value / 1000) * GRAVITY,
      openness: materials.fabric.openness,
      wind,
      gustFactor,
    },
    friction: frictionOf(catalogue.habits.friction),
    sections: sectionsOf(opening, hold, materials),
  });
}

/** Sections at the shallowest corner and the shallowest point along an edge: where the panel stands off the most. */
function sectionsOf(opening: OpeningPlan, { points }: HoldPlan, materials: Materials): PanelHeld['sections'] {
  const at = (place: 'corner' | 'edge') => {
    const depth = Math.min(
      ...points
        .filter(({ kind }) => kind === place)
        .map(({ centre, edgePoint }) => Math.hypot(centre.x - edgePoint.x, centre.y - edgePoint.y)),
      1e3,
    );
    const input: SectionInput = {
      ...materials,
      ...behindGlass(materials),
      steel: materials.holder.kind === 'steel',
      glazing: opening.glazing,
      depth,
      pocketDepth: opening.choices.hold.pocket,
    };
    return stackSection(input, place);
  };
  return { corner: at('corner'), edge: at('edge') };
}

/**
 * The hold points of a panel where they hang on the opening, each with what holds it.
 *
 * @refuses as holdingStrength
 * @source as holdingStrength
 */
export function heldPoints(held: PanelHeld): Result<readonly HeldPoint[], HoldingRefusal> {
  const { hold, place } = held;
  const strengths = strengthsOf(held);
  if (!strengths.ok) return strengths;
  return ok(
    hold.points.map(({ number, kind, centre }) => {
      const { x, y } = movePoint(place, centre);
      return { number, kind, x, y, strength: strengths.value[kind] };
    }),
  );
}

function strengthsOf({
  materials,
  sections,
  friction,
  opening,
  panel,
  hold,
}: PanelHeld): Result<{ readonly corner: Strength; readonly edge: Strength }, HoldingRefusal> {
  const { hottest } = opening.choices.weather;
  const run = runOfOne(panel, hold.points.length);
  const across = (gap: number) => holdingStrength(materials, { gap, hottest, friction, run });
  const corner = across(sections.corner.gap);
  if (!corner.ok) return corner;
  const edge = across(sections.edge.gap);
  return edge.ok ? ok({ corner: corner.value, edge: edge.value }) : edge;
}

import type { Materials } from '../derive/materials.ts';
import type { Catalogue } from '../document/catalogue.ts';
import { figure } from '../plan/figure.ts';
import type { Find } from '../plan/finding.ts';
import type { HoldOpening, HoldPoint, OpeningPlan, PanelPlan } from '../plan/plan.ts';

/** Layers between the magnets of a pair, from the panel to the inside: their sum is the gap. */
export function stackOf(
  plan: OpeningPlan,
  materials: Materials,
): readonly { name: string; thickness: number }[] {
  const { glazing } = plan;
  return [
    { name: 'fabric', thickness: materials.fabric.thickness },
    ...(glazing.standOff > 0 ? [{ name: 'standOff', thickness: glazing.standOff }] : []),
    ...glazing.layers.map(({ kind, thickness }) => ({ name: kind, thickness })),
    { name: 'tape', thickness: materials.tape.thickness },
    { name: 'wrapFilm', thickness: materials.wrapFilm.thickness },
  ];
}

export function holdOpening(
  plan: OpeningPlan,
  _points: readonly HoldPoint[],
  _panel: PanelPlan,
  materials: Materials,
  _catalogue: Catalogue,
  _find: Find,
): HoldOpening {
  const layers = stackOf(plan, materials);
  const gap = layers.reduce((sum, { thickness }) => sum + thickness, 0);
  const out = plan.choices.hold.poleOut;
  return {
    opening: plan.opening,
    outside: materials.outside.id,
    inside: materials.inside.id,
    layers,
    gap: figure(gap, 'mm', 'computed', 'stackSum', [`openings.${plan.opening}.glazing`]),
    pull: null,
    margin: null,
    heatLimit: 80,
    poles: { panelOut: out, insideOut: out === 'north' ? 'south' : 'north' },
  };
}

import { area } from '@panewright/geometry';
import type { Materials } from '../derive/materials.ts';
import type { Magnet } from '../document/catalogue.ts';
import { type Figure, figure } from '../plan/figure.ts';
import type { HoldPoint, PanelPlan } from '../plan/plan.ts';

/** Sintered neodymium and woven polyester binding, g/mm³ (from memory; 7.5 and about 1.2 kg/dm³). */
export const MAGNET_DENSITY = 7.5e-3;
const BINDING_DENSITY = 1.2e-3;

/**
 * Mass of a finished panel: its cloth, the pocket patches, the magnets in them and the binding round it.
 *
 * @returns g
 * @accuracy an estimate: densities are usual ones; thread is left out
 * @source sources.md#usual-densities
 */
export function panelMass(panel: PanelPlan, points: readonly HoldPoint[], materials: Materials): Figure {
  const patches = points.reduce((sum, { pocket }) => sum + (pocket ? area(pocket) : 0), 0);
  const cloth = ((area(panel.cut) + patches) / 1e6) * materials.fabric.mass;
  // What a fastener weighs is not known; it is small beside a magnet.
  const pairs = materials.holder.kind === 'fastener' ? 0 : points.length;
  const magnets = pairs * magnetVolume(materials.outside) * MAGNET_DENSITY;
  return figure(cloth + magnets + bindingMass(panel, materials), 'g', 'estimate', 'massPerArea', [
    `panels.${panel.pattern}.cut`,
    `hold.${panel.pattern}.points`,
    `catalogue.fabrics.${materials.fabric.id}.mass`,
    `catalogue.magnets.${materials.outside.id}`,
  ]);
}

export function magnetVolume({ shape }: Magnet): number {
  const face = shape.kind === 'disc' ? (Math.PI * shape.diameter ** 2) / 4 : shape.width * shape.height;
  return face * shape.thickness;
}

function bindingMass(panel: PanelPlan, { binding }: Materials): number {
  if (panel.edging.kind !== 'binding' || !binding) return 0;
  return panel.edging.cutLength.value * binding.flatWidth * binding.thickness * BINDING_DENSITY;
}

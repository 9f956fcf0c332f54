import { type Tesla, tesla } from '@panewright/quantity';
import type { Magnet } from '../magnet.ts';

/** Recoil permeability of sintered neodymium, typical (sources.md#robertson-2013). */
export const RECOIL_PERMEABILITY = 1.05;

/**
 * Demagnetising factor along the magnetisation, averaged over the magnet.
 *
 * @returns a true ratio, 0 to 1
 * @accuracy within 2 % for discs and square blocks, 9 % for a 4:1 bar (0.3 % of the pull)
 * @source sources.md#sato-ishii-1989
 */
export function demagnetisingFactor(magnet: Magnet): number {
  if (magnet.kind === 'disc') {
    return 1 / ((4 * (magnet.thickness / magnet.diameter)) / Math.sqrt(Math.PI) + 1);
  }
  return 1 / ((2 * magnet.thickness) / Math.sqrt(magnet.width * magnet.height) + 1);
}

/**
 * Polarisation a magnet keeps in its own field, to put in place of the remanence. Without it, pulls of thin
 * neodymium discs come out 4 to 7 % too high.
 *
 * @param recoilPermeability a true ratio, 1 or a little more
 * @returns tesla
 * @range magnets and their partner not touching; accuracy holds from 3 mm of gap
 * @accuracy pull within 1 % of a self-consistent solution, on the low side (estimate for other shapes)
 * @source sources.md#magnets-recoil, #sato-ishii-1989
 */
export function effectiveRemanence(
  magnet: Magnet,
  remanence: Tesla,
  recoilPermeability: number = RECOIL_PERMEABILITY,
): Tesla {
  return tesla(remanence / (1 + (recoilPermeability - 1) * demagnetisingFactor(magnet)));
}

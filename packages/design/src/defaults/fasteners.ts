import type { Fastener, SteelStrip } from '../document/fasteners.ts';

const invented = { supplier: 'Fasteners', strength: { by: 'unknown' } } as const;

/**
 * Fasteners to begin with. Names, prices and packs are invented; spacings and allowances are common practice, no source.
 * No strength is given: none was found in a standard that could be read, so each is marked for the shop's own test.
 */
export const defaultFasteners: readonly Fastener[] = [
  {
    kind: 'snap',
    id: 'snap-24',
    name: 'Snap, 24 line, socket in the panel, stud on the frame',
    spacing: 254,
    beyond: 19.05,
    inset: 9.5,
    face: 15,
    pack: { quantity: 25, price: 1650 },
    fixings: 1,
    ...invented,
  },
  {
    kind: 'hookAndLoop',
    id: 'hook-20',
    name: 'Hook and loop, 20 mm, loop sewn to the panel, hook on the frame',
    laid: 'run',
    length: 50,
    width: 20,
    spacing: 300,
    beyond: 20,
    inset: 10,
    face: 20,
    pack: { quantity: 5000, price: 1240 },
    fixings: 0,
    ...invented,
  },
  {
    kind: 'turnButton',
    id: 'turn-button',
    name: 'Turn button with eyelet',
    spacing: 305,
    beyond: 25.4,
    inset: 12.7,
    face: 16,
    pack: { quantity: 10, price: 1890 },
    fixings: 2,
    ...invented,
  },
  {
    kind: 'suctionCup',
    id: 'cup-45',
    name: 'Suction cup, 45 mm, through an eyelet',
    diameter: 45,
    spacing: 254,
    beyond: -6.35,
    inset: 25,
    face: 45,
    pack: { quantity: 10, price: 990 },
    fixings: 0,
    ...invented,
  },
];

/** Flat mild steel to begin with. Sizes are common ones of the trade; names, prices and packs are invented. */
export const defaultSteelStrips: readonly SteelStrip[] = [
  strip('steel-20x1', 'Steel strip, zinc plated, 20 × 1 mm', 20, 1, 640),
  strip('steel-30x2', 'Steel strip, zinc plated, 30 × 2 mm', 30, 2, 960),
  strip('steel-30x3', 'Steel strip, zinc plated, 30 × 3 mm', 30, 3, 1240),
];

function strip(id: string, name: string, width: number, thickness: number, price: number): SteelStrip {
  return { id, name, supplier: 'Fasteners', width, thickness, pack: { quantity: 2000, price } };
}

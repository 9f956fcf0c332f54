import type { Polygon } from '@panewright/packing';
import { mm } from '@panewright/quantity';

/** A rectangle with a corner at the origin. */
export const box = (w: number, h: number): Polygon => [
  [mm(0), mm(0)],
  [mm(w), mm(0)],
  [mm(w), mm(h)],
  [mm(0), mm(h)],
];

import type { Magnet } from '../document/catalogue.ts';
import type { Face } from './erosion.ts';

/** A magnet's face as pockets are judged by it: a block's width lies along the panel's edge. */
export const faceOf = ({ shape }: Pick<Magnet, 'shape'>): Face =>
  shape.kind === 'disc'
    ? { kind: 'disc', radius: shape.diameter / 2 }
    : { kind: 'block', along: shape.width, across: shape.height };

/** Radius of the circle a magnet's face needs to lie in, mm. */
export const faceRadius = ({ shape }: Pick<Magnet, 'shape'>): number =>
  shape.kind === 'disc' ? shape.diameter / 2 : Math.hypot(shape.width, shape.height) / 2;

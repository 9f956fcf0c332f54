import type { Magnet } from '../document/catalogue.ts';
import type { Face } from './erosion.ts';

/** A magnet's face as pockets are judged by it: a block's width lies along the panel's edge. */
export const faceOf = ({ shape }: Pick<Magnet, 'shape'>): Face =>
  shape.kind === 'disc'
    ? { kind: 'disc', radius: shape.diameter / 2 }
    : { kind: 'block', along: shape.width, across: shape.height };

import type { Catalogue } from '../contract.ts';
import { sharedParts } from './sharedParts.ts';

/** Whether a plan is the same by both catalogues: photos of offcuts, which may be taken one after another, are no part of it. */
export function plansAlike(before: Catalogue, next: Catalogue): boolean {
  if (before === next) return true;
  const [a, b] = [withoutPhotos(before), withoutPhotos(next)];
  return sharedParts(a, b) === a;
}

const withoutPhotos = (catalogue: Catalogue): Catalogue =>
  catalogue.offcuts
    ? { ...catalogue, offcuts: catalogue.offcuts.map(({ photo: _photo, ...rest }) => rest) }
    : catalogue;

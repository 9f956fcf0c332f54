/** A rectangle of cloth by its four measures: from and to along it, near and far across it. */
export interface Measures {
  readonly from: number;
  readonly to: number;
  readonly near: number;
  readonly far: number;
}

/** Sides of a new place, until it is measured: as large as a hand, mm. */
export const HAND = 100;

export const MEASURES = ['from', 'to', 'near', 'far'] as const;

/**
 * With one measure entered anew. Where it begins is entered first, and may be past the old end: the place then goes there
 * as large as it was, as far as the cloth reaches.
 */
export function withMeasure(
  { from, to, near, far }: Measures,
  which: keyof Measures,
  value: number,
  cloth: { readonly along: number; readonly across: number },
): Measures {
  const next = { from, to, near, far, [which]: value };
  if (which === 'from' && value >= to) next.to = Math.min(value + to - from, Math.max(cloth.along, to));
  if (which === 'near' && value >= far) next.far = Math.min(value + far - near, Math.max(cloth.across, far));
  return next;
}

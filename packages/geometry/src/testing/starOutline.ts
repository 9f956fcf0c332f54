import { type Outline, point, type Segment, validate } from '@panewright/geometry';

/** Numbers in 0..1 that depend on the seed alone. */
export function numbersFrom(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
}

/**
 * A ring of `corners` lines and arcs at random, up to 400 mm across, with deep bays and sharp points. Of the draws
 * that cross themselves the next is taken, so every seed gives an outline.
 */
export function starOutline(seed: number, corners: number, x = 0, y = 0): Outline {
  const next = numbersFrom(seed);
  for (;;) {
    const at = Array.from({ length: corners }, (_, i) => {
      const angle = ((i + 0.8 * next()) / corners) * 2 * Math.PI;
      const reach = 50 + 150 * next();
      return point(x + reach * Math.cos(angle), y + reach * Math.sin(angle));
    });
    const segments = at.map((_, i): Segment => {
      const to = at[(i + 1) % corners]!;
      const bulge = (next() - 0.5) * 1.6;
      return next() < 0.5 || bulge === 0 ? { kind: 'line', to } : { kind: 'arc', to, bulge };
    });
    const checked = validate({ segments });
    if (checked.ok) return checked.value;
  }
}

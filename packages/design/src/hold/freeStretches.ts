/** A stretch of a run, both ends counted in, mm from the run's start. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
}

/** Blocked stretches shorter than this may be missed, mm. */
const STEP = 0.25;

/**
 * Stretches of a run where something is clear.
 *
 * @param clear by how much a place is clear, mm; may not change faster than the place moves
 * @returns stretches in order; ends found to 1e-6 mm
 * @source steps as long as the clearance allows: sources.md#sphere-tracing
 */
export function freeStretches(length: number, clear: (t: number) => number): readonly Stretch[] {
  const found: Stretch[] = [];
  let begun: number | null = null;
  let t = 0;
  let here = clear(0);
  if (here >= 0) begun = 0;
  while (t < length) {
    const next = Math.min(length, t + Math.max(Math.abs(here), STEP));
    const there = clear(next);
    if (here >= 0 !== there >= 0) {
      const edge = crossing(clear, t, next);
      if (begun === null) begun = edge;
      else {
        found.push({ from: begun, to: edge });
        begun = null;
      }
    }
    t = next;
    here = there;
  }
  if (begun !== null) found.push({ from: begun, to: length });
  return found;
}

/** A change of sign is found to this, mm. */
const NARROW = 1e-6;

/** Where clearance changes sign between two places, on the clear side. */
function crossing(clear: (t: number) => number, from: number, to: number): number {
  let [a, b, atA, atB] = [from, to, clear(from), clear(to)];
  const clearAtStart = atA >= 0;
  let moved: 'a' | 'b' | null = null;
  // Along the chord, where an end that stays twice counts half (Illinois); a hair inside, so that both ends close in.
  for (let pass = 0; b - a > NARROW; pass++) {
    const chord = a + ((b - a) * atA) / (atA - atB);
    const wanted = pass % 8 === 7 || !Number.isFinite(chord) ? (a + b) / 2 : chord;
    const t = Math.min(Math.max(wanted, a + NARROW / 4), b - NARROW / 4);
    const here = clear(t);
    if (here >= 0 === clearAtStart) {
      if (moved === 'a') atB /= 2;
      [a, atA, moved] = [t, here, 'a'];
    } else {
      if (moved === 'b') atA /= 2;
      [b, atB, moved] = [t, here, 'b'];
    }
  }
  return clearAtStart ? a : b;
}

/** Stretches less what lies within `[from, to]`. */
export function without(free: readonly Stretch[], from: number, to: number): readonly Stretch[] {
  return free.flatMap((stretch) =>
    [
      { from: stretch.from, to: Math.min(stretch.to, from) },
      { from: Math.max(stretch.from, to), to: stretch.to },
    ].filter((part) => part.from <= part.to && (part.to < to || part.from > from)),
  );
}

/** What two lists of stretches have in common. */
export function common(a: readonly Stretch[], b: readonly Stretch[]): readonly Stretch[] {
  return a.flatMap((p) =>
    b
      .map((q) => ({ from: Math.max(p.from, q.from), to: Math.min(p.to, q.to) }))
      .filter(({ from, to }) => from <= to),
  );
}

/** The place in the stretches nearest to `t`, or null where there is none. */
export function nearestFree(free: readonly Stretch[], t: number): number | null {
  let best: number | null = null;
  for (const { from, to } of free) {
    const at = Math.min(Math.max(t, from), to);
    if (best === null || Math.abs(at - t) < Math.abs(best - t)) best = at;
  }
  return best;
}

export const isFree = (free: readonly Stretch[], t: number, slack = 1e-6): boolean =>
  free.some(({ from, to }) => t >= from - slack && t <= to + slack);

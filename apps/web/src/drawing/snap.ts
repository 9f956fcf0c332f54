/** Where a length comes to lie: on a line near it, or else on a whole step. */
export interface Snapped {
  readonly at: number;
  /** The line it caught on, if any. */
  readonly line: number | null;
}

interface Snapping {
  /** Lines it may catch on, mm. */
  readonly lines: readonly number[];
  /** What of the thing may catch, mm from the length itself: its two sides and its middle, say. */
  readonly parts: readonly number[];
  /** How near is near, mm. */
  readonly within: number;
  readonly step: number;
}

/** The nearest catch within reach; where there is none, the nearest whole step, to a hundredth of a micrometre. */
export function snap(length: number, { lines, parts, within, step }: Snapping): Snapped {
  let best: Snapped = { at: whole(Math.round(length / step) * step), line: null };
  let least = within;
  for (const line of lines)
    for (const part of parts) {
      const off = Math.abs(line - part - length);
      if (off >= least) continue;
      least = off;
      best = { at: whole(line - part), line };
    }
  return best;
}

export const whole = (length: number): number => Math.round(length * 1e5) / 1e5;

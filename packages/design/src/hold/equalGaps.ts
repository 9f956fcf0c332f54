/** How one side is divided. Positions in mm from its first sharp corner, both corners included. */
export interface Division {
  readonly gaps: number;
  readonly gap: number;
  readonly positions: readonly number[];
  readonly reason: 'oneGap' | 'withinTolerance' | 'divided';
}

/** A gap over the limit by less than this is at the limit: a tape is read to far less, mm. */
const SLACK = 0.01;

/**
 * Divides a side into the fewest equal gaps not over the shop's spacing; a wider gap is let pass up to `upTo`.
 *
 * @param length between the sharp corners, mm, above 0
 * @param spacing mm, above 0
 * @param upTo mm; counts where it is above `spacing`
 * @source common practice, no source
 */
export function equalGaps(length: number, spacing: number, upTo: number): Division {
  const strict = Math.max(1, Math.ceil((length - SLACK) / spacing));
  const gaps = Math.max(1, Math.ceil((length - SLACK) / Math.max(spacing, upTo)));
  const gap = length / gaps;
  return {
    gaps,
    gap,
    positions: Array.from({ length: gaps + 1 }, (_, k) => k * gap),
    reason: strict === 1 ? 'oneGap' : gaps < strict ? 'withinTolerance' : 'divided',
  };
}

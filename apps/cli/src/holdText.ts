import type { OperationOutput } from '@panewright/contract';

const MODES = { pullOff: 'lifts', slip: 'creeps', peel: 'peels' } as const;

export const two = (value: number | null) => (value === null ? 'ample' : value.toFixed(2));
export const speed = (value: number | null) => (value === null ? 'over 60' : value.toFixed(1));

/** Why single points have winds of their own where the whole panel has none. */
const SLIDES =
  '  At its least the whole panel slides with no wind: against its weight only friction is counted, at its lowest. A point also has what its pair draws back when shifted sideways, so its winds may be above none. Go by the whole panel.';

type Opening = OperationOutput<'holdPoints'>['openings'][number];

/** One opening's verdict, and a line for each of its points. */
export function pointsText(
  { opening, pattern, margin, asked, letsGo, points, wrongWays }: Opening,
  wind: number,
): string {
  const whole = margin
    ? `holds ${two(margin.low)} to ${two(margin.high)} times what ${wind} m/s of wind asks (${asked} is wanted); comes off at ${speed(letsGo.low)} to ${speed(letsGo.high)} m/s`
    : 'has no pull that can be worked out';
  const rows = points.map(
    (one) =>
      `  ${String(one.point).padStart(2)}  ${one.place.padEnd(22)}  ${two(one.margin.low)} to ${two(one.margin.high)}, ${MODES[one.mode]} at ${speed(one.letsGo.low)} to ${speed(one.letsGo.high)} m/s.  ${one.why}`,
  );
  return [
    `${opening} (${pattern}): ${whole}. Estimate: try it before you trust it, and never on the move.`,
    ...(letsGo.low === 0 ? [SLIDES] : []),
    ...rows,
    ...wrongWays.map(({ text }) => `  put on wrong: ${text}`),
  ].join('\n');
}

const percent = (ratio: number) => `${(100 * ratio).toFixed(1)} %`;

/** Which of the two laws says what, and what would narrow it. */
export function lawsText({ low, high, measured }: OperationOutput<'holdPoints'>['slack']): string {
  const cloth = measured
    ? `with the shop's own slack of ${percent(low)} to ${percent(high)}`
    : `for a slack of ${percent(low)} to ${percent(high)}, which is usual and was not measured: measure it and enter it in the catalogue (habits, slack), and they narrow`;
  return `“Holds” is the panel as a whole: the pull of all its points against the wind's lift and the weight. The lines of single points add what the cloth draws on them along its edges, ${cloth}.`;
}

/** All hold points as one table, shorter: what a plan is read for. */
export function holdTable({ wind, slack, openings }: OperationOutput<'holdPoints'>): string {
  const head = ['opening', 'point', 'where', 'margin', 'gives by', 'at m/s of mean wind'];
  const rows = openings.flatMap(({ opening, margin, letsGo, points }) => [
    [
      opening,
      'all',
      'the whole panel',
      margin ? `${two(margin.low)} to ${two(margin.high)}` : 'no pull',
      margin ? 'comes off' : '',
      margin ? `${speed(letsGo.low)} to ${speed(letsGo.high)}` : '',
    ],
    ...points.map((one) => [
      '',
      String(one.point),
      one.place,
      `${two(one.margin.low)} to ${two(one.margin.high)}`,
      MODES[one.mode],
      `${speed(one.letsGo.low)} to ${speed(one.letsGo.high)}`,
    ]),
  ]);
  const wide = head.map((_, k) => Math.max(...[head, ...rows].map((row) => row[k]!.length)));
  const line = (row: readonly string[]) =>
    `  ${row
      .map((cell, k) => cell.padEnd(wide[k]!))
      .join('  ')
      .trimEnd()}`;
  return [
    `Hold points in ${wind} m/s of mean wind. Estimates: try one panel before you trust them, and never on the move.`,
    ...[head, ...rows].map(line),
    lawsText(slack),
  ].join('\n');
}

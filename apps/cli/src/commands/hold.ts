import { callOperation, type OperationOutput } from '@panewright/contract';
import { EXIT, printRefusal } from '../exits.ts';
import type { Io } from '../io.ts';
import { designInput } from '../readFile.ts';

export interface HoldOptions {
  readonly job: string;
  readonly catalogue: string | undefined;
  /** One opening alone, with the magnets that would hold it. */
  readonly opening: string | undefined;
  readonly json: boolean;
}

const MODES = { pullOff: 'lifts', slip: 'creeps', peel: 'peels' } as const;

/** Prints every hold point with its margin, and for one opening which magnets would hold it. */
export async function hold(options: HoldOptions, io: Io): Promise<number> {
  const input = await designInput(options.job, options.catalogue);
  if (!input.ok) return printRefusal(input.refusal, options.json, io);
  const found = await callOperation('holdPoints', input.value);
  if (!found.ok) return printRefusal(found.refusal, options.json, io);
  const { wind, openings: all } = found.value as OperationOutput<'holdPoints'>;
  const { opening } = options;
  const openings = opening === undefined ? all : all.filter((one) => one.opening === opening);
  const choices =
    opening === undefined ? null : await callOperation('magnetChoices', { ...input.value, opening });
  if (choices && !choices.ok) return printRefusal(choices.refusal, options.json, io);
  const magnets = choices ? (choices.value as OperationOutput<'magnetChoices'>) : null;
  if (options.json) io.out(`${JSON.stringify({ wind, openings, ...(magnets ? { magnets } : {}) })}\n`);
  else
    io.out(
      `${[...openings.map((one) => pointsText(one, wind)), ...(magnets ? [magnetsText(magnets)] : [])].join('\n\n')}\n`,
    );
  const weak = openings.some(({ margin }) => !margin || margin.low < 1);
  return weak ? EXIT.stops : EXIT.fine;
}

const two = (value: number | null) => (value === null ? 'ample' : value.toFixed(2));
const speed = (value: number | null) => (value === null ? 'over 60' : value.toFixed(1));

type Opening = OperationOutput<'holdPoints'>['openings'][number];

function pointsText({ opening, pattern, margin, asked, letsGo, points }: Opening, wind: number): string {
  const whole = margin
    ? `holds ${two(margin.low)} to ${two(margin.high)} times what ${wind} m/s of wind asks (${asked} is wanted); comes off at ${speed(letsGo.low)} to ${speed(letsGo.high)} m/s`
    : 'has no pull that can be worked out';
  const rows = points.map(
    (one) =>
      `  ${String(one.point).padStart(2)}  ${one.place.padEnd(22)}  ${two(one.margin.low)} to ${two(one.margin.high)}, ${MODES[one.mode]} at ${speed(one.letsGo.low)} to ${speed(one.letsGo.high)} m/s.  ${one.why}`,
  );
  return [
    `${opening} (${pattern}): ${whole}. Estimate: try it before you trust it, and never on the move.`,
    ...rows,
  ].join('\n');
}

function magnetsText({ chosen, choices, rejected, instead }: OperationOutput<'magnetChoices'>): string {
  const pair = ({ outside, inside }: { outside: string; inside: string }) =>
    outside === inside ? outside : `${outside} with ${inside} inside`;
  const mark = (one: { outside: string; inside: string }) =>
    one.outside === chosen.outside && one.inside === chosen.inside ? '*' : ' ';
  return [
    `Which magnets (* chosen):`,
    ...choices.map(
      (one) =>
        `${mark(one)} ${pair(one)}: ${one.points} points, margin ${two(one.margin)}, comes off at ${speed(one.letsGoAt)} m/s`,
    ),
    ...rejected.map(
      (one) => `${mark(one)} not ${pair(one)}: ${one.because.map(({ text }) => text).join(' ')}`,
    ),
    ...instead.map(({ text }) => `  instead: ${text}`),
  ].join('\n');
}

import { callOperation, type OperationOutput } from '@panewright/contract';
import { EXIT, printRefusal } from '../exits.ts';
import { lawsText, pointsText, speed, two } from '../holdText.ts';
import type { Io } from '../io.ts';
import { designInput } from '../readFile.ts';

export interface HoldOptions {
  readonly job: string;
  readonly catalogue: string | undefined;
  /** One opening alone, with the magnets that would hold it. */
  readonly opening: string | undefined;
  readonly json: boolean;
}

/** Prints every hold point with its margin, and for one opening which magnets would hold it. */
export async function hold(options: HoldOptions, io: Io): Promise<number> {
  const input = await designInput(options.job, options.catalogue);
  if (!input.ok) return printRefusal(input.refusal, options.json, io);
  const found = await callOperation('holdPoints', input.value);
  if (!found.ok) return printRefusal(found.refusal, options.json, io);
  const { wind, slack, openings: all } = found.value as OperationOutput<'holdPoints'>;
  const { opening } = options;
  const openings = opening === undefined ? all : all.filter((one) => one.opening === opening);
  const choices =
    opening === undefined ? null : await callOperation('magnetChoices', { ...input.value, opening });
  if (choices && !choices.ok) return printRefusal(choices.refusal, options.json, io);
  const magnets = choices ? (choices.value as OperationOutput<'magnetChoices'>) : null;
  if (options.json) io.out(`${JSON.stringify({ wind, slack, openings, ...(magnets ? { magnets } : {}) })}\n`);
  else
    io.out(
      `${[
        ...openings.map((one) => pointsText(one, wind)),
        lawsText(slack),
        ...(magnets ? [magnetsText(magnets)] : []),
      ].join('\n\n')}\n`,
    );
  const weak = openings.some(({ margin }) => !margin || margin.low < 1);
  return weak ? EXIT.stops : EXIT.fine;
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

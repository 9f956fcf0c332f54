import { callOperation, type OperationOutput } from '@panewright/contract';
import { EXIT, printRefusal } from '../exits.ts';
import type { Io } from '../io.ts';
import { wholeNumber } from '../options.ts';
import { designInput } from '../readFile.ts';

export interface CheckOptions {
  readonly job: string;
  readonly catalogue: string | undefined;
  readonly seed: string | undefined;
  readonly json: boolean;
}

const HEADINGS = {
  stop: 'Cannot be made as it stands',
  doubt: 'Look again before cutting',
  caution: 'Can hurt someone',
  note: 'Good to know',
} as const;

/** Prints what is wrong or doubtful in a job. */
export async function check(options: CheckOptions, io: Io): Promise<number> {
  const input = await designInput(options.job, options.catalogue);
  if (!input.ok) return printRefusal(input.refusal, options.json, io);
  const result = await callOperation('check', { ...input.value, seed: wholeNumber('seed', options.seed, 1) });
  if (!result.ok) return printRefusal(result.refusal, options.json, io);
  const found = result.value as OperationOutput<'check'>;
  io.out(options.json ? `${JSON.stringify(found)}\n` : asText(found));
  return found.counts.stop > 0 ? EXIT.stops : EXIT.fine;
}

function asText({ job, findings }: OperationOutput<'check'>): string {
  const blocks = (['stop', 'doubt', 'caution', 'note'] as const).flatMap((severity) => {
    const some = findings.filter((finding) => finding.severity === severity);
    return some.length === 0
      ? []
      : [`${HEADINGS[severity]}:\n${some.map(({ text }) => `  - ${text}`).join('\n')}`];
  });
  return `${job.name}\n\n${blocks.length === 0 ? 'Nothing to say.' : blocks.join('\n\n')}\n`;
}

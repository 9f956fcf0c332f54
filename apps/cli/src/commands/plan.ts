import { callOperation, type OperationOutput, type Tools } from '@panewright/contract';
import { EXIT, printRefusal, Usage } from '../exits.ts';
import { fonts } from '../fonts.ts';
import { holdTable } from '../holdText.ts';
import type { Io } from '../io.ts';
import { wholeNumber } from '../options.ts';
import { designInput } from '../readFile.ts';
import { type SheetFlags, sheetChoices } from '../sheetFlags.ts';
import { writeSet } from '../writeSet.ts';

export interface PlanOptions {
  readonly job: string;
  readonly catalogue: string | undefined;
  readonly seed: string | undefined;
  readonly out: string | undefined;
  readonly date: string | undefined;
  readonly revision: string | undefined;
  readonly sheets: SheetFlags;
  readonly json: boolean;
}

/**
 * Makes every sheet and cut file of a job and its plan, in one folder. What cannot be made is left out and said; whether
 * there is such a thing is told by `check`.
 */
export async function plan(options: PlanOptions, io: Io): Promise<number> {
  if (options.out === undefined && !options.json)
    throw new Usage('Name the folder for the sheets: --out DIR.');
  const read = await designInput(options.job, options.catalogue);
  if (!read.ok) return printRefusal(read.refusal, options.json, io);
  const input = { ...read.value, seed: wholeNumber('seed', options.seed, 1) };
  if (options.out === undefined) return planAlone(input, io);
  const { revision } = options;
  const result = await callOperation(
    'sheets',
    {
      ...input,
      date: options.date ?? io.today(),
      ...sheetChoices(options.sheets),
      ...(revision === undefined ? {} : { revision }),
    },
    { fonts, ...(io.progress ? { progress: told(io.progress) } : {}) },
  );
  io.progress?.('');
  if (!result.ok) return printRefusal(result.refusal, options.json, io);
  const made = result.value as OperationOutput<'sheets'>;
  const files = made.files.map(({ path, base64 }) => ({ path, bytes: Buffer.from(base64, 'base64') }));
  await writeSet(options.out, files);
  const planFile = files.find(({ path }) => path === 'plan.json');
  if (options.json) io.out(planFile!.bytes.toString('utf8'));
  else {
    const held = await callOperation('holdPoints', read.value);
    const table = held.ok ? `\n\n${holdTable(held.value as OperationOutput<'holdPoints'>)}` : '';
    io.out(`${made.summary.join('\n')}${table}\n\n${files.length} files in ${options.out}\n`);
  }
  if (made.stops > 0 && !options.json)
    io.err('Part of the job cannot be made as it stands: panewright check says what.\n');
  return EXIT.fine;
}

const told =
  (show: (text: string) => void): NonNullable<Tools['progress']> =>
  (done, of, stage) =>
    show(
      `${stage === 'plan' ? 'The plan' : 'The sheets'}: ${done} of ${of}. Ctrl+C stops; nothing is then written.`,
    );

async function planAlone(input: Readonly<Record<string, unknown>>, io: Io): Promise<number> {
  const result = await callOperation('plan', input);
  if (!result.ok) return printRefusal(result.refusal, true, io);
  const made = result.value as OperationOutput<'plan'>;
  io.out(`${JSON.stringify(made)}\n`);
  return EXIT.fine;
}

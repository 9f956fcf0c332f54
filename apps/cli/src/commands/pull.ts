import { callOperation, type OperationOutput } from '@panewright/contract';
import { EXIT, printRefusal } from '../exits.ts';
import type { Io } from '../io.ts';
import { readJson } from '../readFile.ts';

/** Prints the force on the second magnet of each case. */
export async function pull(
  options: { readonly cases: string; readonly json: boolean },
  io: Io,
): Promise<number> {
  const cases = await readJson(options.cases);
  if (!cases.ok) return printRefusal(cases.refusal, options.json, io);
  const result = await callOperation('pull', { cases: cases.value });
  if (!result.ok) return printRefusal(result.refusal, options.json, io);
  const { forces } = result.value as OperationOutput<'pull'>;
  if (options.json) io.out(`${JSON.stringify(forces)}\n`);
  else for (const { id, force_N: force } of forces) io.out(`${id}: ${force.join(', ')} N\n`);
  return EXIT.fine;
}

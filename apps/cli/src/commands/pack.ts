import { forEvaluations, forSeconds, packTogether, readInstance } from '@panewright/contract';
import { EXIT, printRefusal, Usage } from '../exits.ts';
import type { Io } from '../io.ts';
import { positiveNumber, wholeNumber } from '../options.ts';
import { readJson } from '../readFile.ts';

/** Searches side by side. Always as many, so that a seed and a budget mean the same on every machine. */
const SEARCHES = 2;

export interface PackOptions {
  readonly instance: string;
  readonly seconds: string | undefined;
  readonly evaluations: string | undefined;
  readonly seed: string | undefined;
  readonly json: boolean;
}

/** Lays the pieces of an instance for so many seconds, and prints the lay. */
export async function pack(options: PackOptions, io: Io): Promise<number> {
  const budgetOf = budget(options, io);
  const seed = wholeNumber('seed', options.seed, 1);
  const text = await readJson(options.instance);
  if (!text.ok) return printRefusal(text.refusal, options.json, io);
  const read = readInstance(text.value);
  if (!read.ok) return printRefusal(read.refusal, options.json, io);
  const threads = io.searchThreads(SEARCHES);
  const result = await packTogether(read.value, seed, budgetOf(), threads.searchers, (best) => {
    if (!options.json) io.err(`length ${best.length}, ${(100 * best.density).toFixed(2)} % of the cloth\n`);
  }).finally(threads.end);
  if (!result.ok) return printRefusal(result.refusal, options.json, io);
  if (options.json) io.out(`${JSON.stringify(result.value)}\n`);
  else
    io.out(
      `${result.value.name}: length ${result.value.length}, density ${result.value.density.toFixed(3)} %\n`,
    );
  return EXIT.fine;
}

/** Made when the search begins, as the clock of a budget in seconds then starts. */
function budget({ seconds, evaluations }: PackOptions, io: Io) {
  if (seconds !== undefined && evaluations !== undefined)
    throw new Usage('Give --seconds or --evaluations, not both.');
  if (evaluations !== undefined) {
    const whole = wholeNumber('evaluations', evaluations, 0, 1e12);
    return () => forEvaluations(whole);
  }
  const whole = positiveNumber('seconds', seconds, 10, 86_400);
  return () => forSeconds(whole, io.clock);
}

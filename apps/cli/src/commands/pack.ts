import { forSeconds, pack as layPieces, readInstance } from '@panewright/contract';
import { EXIT, printRefusal } from '../exits.ts';
import type { Io } from '../io.ts';
import { positiveNumber, wholeNumber } from '../options.ts';
import { readJson } from '../readFile.ts';

export interface PackOptions {
  readonly instance: string;
  readonly seconds: string | undefined;
  readonly seed: string | undefined;
  readonly json: boolean;
}

/** Lays the pieces of an instance for so many seconds, and prints the lay. */
export async function pack(options: PackOptions, io: Io): Promise<number> {
  const seconds = positiveNumber('seconds', options.seconds, 10, 86_400);
  const seed = wholeNumber('seed', options.seed, 1);
  const text = await readJson(options.instance);
  if (!text.ok) return printRefusal(text.refusal, options.json, io);
  const read = readInstance(text.value);
  if (!read.ok) return printRefusal(read.refusal, options.json, io);
  const result = layPieces(read.value, seed, forSeconds(seconds, io.clock), ({ best }) => {
    if (!options.json) io.err(`length ${best.length}, ${(100 * best.density).toFixed(2)} % of the cloth\n`);
  });
  if (!result.ok) return printRefusal(result.refusal, options.json, io);
  if (options.json) io.out(`${JSON.stringify(result.value)}\n`);
  else
    io.out(
      `${result.value.name}: length ${result.value.length}, density ${result.value.density.toFixed(3)} %\n`,
    );
  return EXIT.fine;
}

import { readFile } from 'node:fs/promises';
import { basename } from 'node:path';
import {
  type Refusal,
  type Result,
  readLineText,
  readRulerText,
  readTapeText,
  readTapsText,
  type TraceRequest,
  tracePhotoFiles,
  traceSummary,
} from '@panewright/contract';
import { EXIT, printRefusal, Usage } from '../exits.ts';
import type { Io } from '../io.ts';
import { reason } from '../readFile.ts';

export interface TraceOptions {
  readonly photos: readonly string[];
  readonly tapes: readonly string[];
  readonly ruler: string | undefined;
  readonly paper: string | undefined;
  readonly line: string | undefined;
  readonly taps: string | undefined;
  readonly json: boolean;
}

/** Prints the outline that photos of a traced film show, and how well it is known. */
export async function trace(options: TraceOptions, io: Io): Promise<number> {
  const { paper } = options;
  if (paper !== undefined && paper !== 'A4' && paper !== 'Letter')
    throw new Usage(`--paper must be A4 or Letter; it is “${paper}”.`);
  const read = readOptions(options);
  if (!read.ok) return printRefusal(read.refusal, options.json, io);
  const photos = await Promise.all(options.photos.map(readPhoto));
  const result = await tracePhotoFiles({
    photos,
    ...read.value,
    ...(paper === undefined ? {} : { paper }),
    clock: () => 1000 * io.clock(),
    onProgress: (stage, photo) => {
      if (!options.json) io.err(`${stage}${photo > 0 ? ` ${photo + 1}` : ''} …\n`);
    },
  });
  if (!result.ok) return printRefusal(result.refusal, options.json, io);
  if (options.json) io.out(`${JSON.stringify(result.value)}\n`);
  else io.out(`${traceSummary(result.value).join('\n')}\n`);
  return EXIT.fine;
}

/** The options that are texts of their own, read. */
function readOptions({
  tapes: texts,
  ruler,
  line,
  taps,
}: TraceOptions): Result<Pick<TraceRequest, 'tapes' | 'ruler' | 'line' | 'taps'>, Refusal> {
  const tapes = [];
  for (const text of texts) {
    const tape = readTapeText(text);
    if (!tape.ok) return tape;
    tapes.push(tape.value);
  }
  let read: Pick<TraceRequest, 'tapes' | 'ruler' | 'line' | 'taps'> = { tapes };
  if (ruler !== undefined) {
    const one = readRulerText(ruler);
    if (!one.ok) return one;
    read = { ...read, ruler: one.value };
  }
  if (line !== undefined) {
    const one = readLineText(line);
    if (!one.ok) return one;
    read = { ...read, line: one.value };
  }
  if (taps !== undefined) {
    const one = readTapsText(taps);
    if (!one.ok) return one;
    read = { ...read, taps: one.value };
  }
  return { ok: true, value: read };
}

async function readPhoto(path: string): Promise<{ readonly name: string; readonly bytes: Uint8Array }> {
  try {
    return { name: basename(path), bytes: await readFile(path) };
  } catch (error) {
    throw new Usage(`${path} cannot be read: ${reason(error)}.`);
  }
}

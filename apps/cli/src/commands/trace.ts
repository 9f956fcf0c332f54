import { readFile } from 'node:fs/promises';
import { basename } from 'node:path';
import { tracePhotoFiles, traceSummary } from '@panewright/contract';
import { EXIT, printRefusal, Usage } from '../exits.ts';
import type { Io } from '../io.ts';
import { reason } from '../readFile.ts';

export interface TraceOptions {
  readonly photos: readonly string[];
  readonly tapes: readonly string[];
  readonly ruler: string | undefined;
  readonly paper: string | undefined;
  readonly json: boolean;
}

/** Prints the outline that photos of a traced film show, and how well it is known. */
export async function trace(options: TraceOptions, io: Io): Promise<number> {
  const { ruler, paper } = options;
  if (paper !== undefined && paper !== 'A4' && paper !== 'Letter')
    throw new Usage(`--paper must be A4 or Letter; it is “${paper}”.`);
  const photos = await Promise.all(options.photos.map(readPhoto));
  const result = await tracePhotoFiles({
    photos,
    tapes: options.tapes,
    ...(ruler === undefined ? {} : { ruler }),
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

async function readPhoto(path: string): Promise<{ readonly name: string; readonly bytes: Uint8Array }> {
  try {
    return { name: basename(path), bytes: await readFile(path) };
  } catch (error) {
    throw new Usage(`${path} cannot be read: ${reason(error)}.`);
  }
}

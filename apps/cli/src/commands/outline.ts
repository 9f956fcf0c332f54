import { readFile } from 'node:fs/promises';
import { basename } from 'node:path';
import { base64, callOperation, type OperationOutput } from '@panewright/contract';
import { EXIT, printRefusal, Usage } from '../exits.ts';
import type { Io } from '../io.ts';
import { reason } from '../readFile.ts';

export interface OutlineOptions {
  readonly file: string;
  readonly unit: string | undefined;
  readonly points: string | undefined;
  readonly json: boolean;
}

/** Prints the outlines that a drawing or a table of points holds. */
export async function outline({ file, unit, points, json }: OutlineOptions, io: Io): Promise<number> {
  const answer = await callOperation('readDrawing', {
    name: basename(file),
    base64: base64(await bytesOf(file)),
    ...(unit === undefined ? {} : { unit }),
    ...(points === undefined ? {} : { points }),
  });
  if (!answer.ok) return printRefusal(answer.refusal, json, io);
  const found = answer.value as OperationOutput<'readDrawing'>;
  if (json) io.out(`${JSON.stringify(found)}\n`);
  else io.out(`${lines(found).join('\n')}\n`);
  return EXIT.fine;
}

const lines = ({ outlines, notes }: OperationOutput<'readDrawing'>): readonly string[] => [
  ...outlines.map(
    ({ name, width, height, outline: { segments } }, index) =>
      `${name || `outline ${index + 1}`}: ${segments.length} lines and arcs, ${width.toFixed(1)} × ${height.toFixed(1)} mm.`,
  ),
  ...notes.map(({ say }) => say),
];

async function bytesOf(path: string): Promise<Uint8Array> {
  try {
    return await readFile(path);
  } catch (error) {
    throw new Usage(`${path} cannot be read: ${reason(error)}.`);
  }
}

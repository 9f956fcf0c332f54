import { type FileRefusal, type ReadFile, type ReadOptions, readOutlines } from '@panewright/files';
import { mm } from '@panewright/quantity';

export type Told = Partial<ReadOptions>;

export const tried = (file: Uint8Array | string, told: Told = {}) =>
  readOutlines(file, { closeWithin: mm(0.5), arcTolerance: mm(0.05), ...told });

/** What a file that must be read holds. */
export function readFile(file: Uint8Array | string, told: Told = {}): ReadFile {
  const read = tried(file, told);
  if (!read.ok) throw new Error(`Refused: ${JSON.stringify(read.refusal)}`);
  return read.value;
}

/** The refusal of a file that must not be read. */
export function refusalOf(file: Uint8Array | string, told: Told = {}): FileRefusal {
  const read = tried(file, told);
  if (read.ok) throw new Error('Read, though it should have been refused.');
  return read.refusal;
}

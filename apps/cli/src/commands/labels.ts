import { writeFile } from 'node:fs/promises';
import { callOperation, type OperationOutput } from '@panewright/contract';
import { EXIT, printRefusal, Usage } from '../exits.ts';
import { fonts } from '../fonts.ts';
import type { Io } from '../io.ts';
import { wholeNumber } from '../options.ts';
import { readJson, reason } from '../readFile.ts';

export interface LabelsOptions {
  readonly catalogue: string;
  readonly out: string | undefined;
  readonly labels: string | undefined;
  readonly start: string | undefined;
  readonly units: string | undefined;
  readonly language: string | undefined;
  readonly date: string | undefined;
  /** Offcuts by id; all that are not yet cut where none is named. */
  readonly offcuts: readonly string[];
  readonly json: boolean;
}

/** Prints labels for the offcuts that a catalogue keeps in stock, as one PDF. */
export async function labels(options: LabelsOptions, io: Io): Promise<number> {
  const { out, language, start, offcuts } = options;
  if (out === undefined) throw new Usage('Name the file for the labels: --out FILE.pdf.');
  if (options.labels === undefined)
    throw new Usage('Name the sheet of labels: --labels NAME, as "99 × 38 mm, 2 × 7".');
  const catalogue = await readJson(options.catalogue);
  if (!catalogue.ok) return printRefusal(catalogue.refusal, options.json, io);
  const input = {
    ...{ catalogue: catalogue.value, units: options.units ?? 'mm', stock: options.labels },
    date: options.date ?? io.today(),
    ...(language === undefined ? {} : { language }),
    ...(start === undefined ? {} : { start: wholeNumber('label-start', start, 1) }),
    ...(offcuts.length === 0 ? {} : { offcuts }),
  };
  const made = await callOperation('offcutLabels', input, { fonts });
  if (!made.ok) return printRefusal(made.refusal, options.json, io);
  const { base64, labels: count } = made.value as OperationOutput<'offcutLabels'>;
  try {
    await writeFile(out, Buffer.from(base64, 'base64'));
  } catch (error) {
    throw new Usage(`${out} cannot be written: ${reason(error)}.`);
  }
  io.out(options.json ? `${JSON.stringify({ labels: count, file: out })}\n` : `${count} labels in ${out}\n`);
  return EXIT.fine;
}

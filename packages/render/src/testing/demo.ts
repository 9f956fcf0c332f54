import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import { type Catalogue, defaultCatalogue, derive, type Job } from '@panewright/design';
import { laysOf, type PaperName, piecesOf, type SheetInput, sheetsOf } from '@panewright/drawing';
import { loadFonts, type RenderOptions } from '../index.ts';

const folder = join(dirname(createRequire(import.meta.url).resolve('dejavu-fonts-ttf/package.json')), 'ttf');
const font = (name: string) => new Uint8Array(readFileSync(join(folder, `${name}.ttf`)));

export const fonts = loadFonts({
  regular: font('DejaVuSansCondensed'),
  bold: font('DejaVuSansCondensed-Bold'),
});

export const options: RenderOptions = { fonts, date: '2026-11-25', id: 'test', author: 'Your shop' };

export const demoJob = JSON.parse(
  readFileSync(new URL('../../../../demo/camper.job.json', import.meta.url), 'utf8'),
) as Job;

export function inputFor(job: Job, paper: PaperName, catalogue: Catalogue = defaultCatalogue): SheetInput {
  return {
    plan: derive(job, catalogue, 1),
    job,
    catalogue,
    options: {
      ...{ paper, units: job.units, date: '2026-11-25', revision: '1', metrics: fonts.metrics },
      say: ({ code, where }) => `${code} ${Object.values(where).join(' ')}`,
    },
  };
}

export const drawingsFor = (input: SheetInput) => ({
  sheets: sheetsOf(input),
  pieces: piecesOf(input),
  lays: laysOf(input),
});

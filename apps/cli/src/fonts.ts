import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { dirname, join } from 'node:path';
import type { FontBytes } from '@panewright/contract';

/** The two faces of the sheets, from the font package. */
export async function fonts(): Promise<FontBytes> {
  const folder = dirname(createRequire(import.meta.url).resolve('dejavu-fonts-ttf/package.json'));
  const read = (name: string) => readFile(join(folder, 'ttf', name));
  const [regular, bold] = await Promise.all([
    read('DejaVuSansCondensed.ttf'),
    read('DejaVuSansCondensed-Bold.ttf'),
  ]);
  return { regular, bold };
}

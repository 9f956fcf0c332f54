import type { Sheet } from '@panewright/drawing';
import { z } from 'zod';
import { base64 } from '../base64.ts';
import type { Tools } from '../ports.ts';

/** A sheet answered as one PDF. */
export const onePdf = {
  path: z.string().describe('a name for the file'),
  title: z.string(),
  mediaType: z.string(),
  base64: z.string(),
};

/** What draws and renders. Loaded when first asked for: it is the largest part of the program. */
export async function renderers({ fonts }: Tools) {
  if (!fonts) throw new Error('the sheets need fonts, and this door gives none');
  const [drawing, render, bytes] = await Promise.all([
    import('@panewright/drawing'),
    import('@panewright/render'),
    fonts(),
  ]);
  return { drawing, render, fonts: render.loadFonts(bytes) };
}

interface Look {
  /** ISO day written in the file as the day of making; left out, every run gives the same bytes. */
  readonly date: string | undefined;
  readonly id: string;
  readonly author: string;
  readonly language: string;
}

/** Renders a sheet as one PDF. */
export async function pdfOf(
  sheet: Sheet,
  { date = '2000-01-01', ...look }: Look,
  { render, fonts }: Pick<Awaited<ReturnType<typeof renderers>>, 'render' | 'fonts'>,
) {
  const [file] = await render.sheetFiles(sheet, { fonts, date, ...look });
  const { path, mime, bytes } = file!;
  return { path, title: sheet.title, mediaType: mime, base64: base64(bytes) };
}

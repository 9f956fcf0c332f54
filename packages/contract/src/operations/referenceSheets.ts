import { ok } from '@panewright/quantity';
import { z } from 'zod';
import { base64 } from '../base64.ts';
import { computation } from './operation.ts';

export const referenceSheets = computation({
  summary: 'The four sheets to print and lay about a traced film before it is photographed, as one PDF.',
  input: z.strictObject({
    paper: z.enum(['A4', 'Letter']),
    date: z.optional(z.iso.date()).describe('written in the file as the day of making'),
  }),
  output: z.strictObject({
    path: z.string().describe('a name for the file'),
    title: z.string(),
    mediaType: z.string(),
    base64: z.string(),
  }),
  example: { paper: 'A4', date: '2026-11-25' },
  run: async ({ paper, date }, { fonts: fontBytes }) => {
    if (!fontBytes) throw new Error('the sheets need fonts, and this door gives none');
    // Loaded when first asked for: the renderers are the largest part of the program.
    const [{ referencePages }, { loadFonts, sheetFiles }] = await Promise.all([
      import('@panewright/drawing'),
      import('@panewright/render'),
    ]);
    const fonts = loadFonts(await fontBytes());
    const sheet = referencePages({ paper, metrics: fonts.metrics });
    const [file] = await sheetFiles(sheet, {
      fonts,
      date: date ?? '2000-01-01',
      id: paper,
      author: 'Panewright',
      language: 'en',
    });
    const { path, mime, bytes } = file!;
    return ok({ path, title: sheet.title, mediaType: mime, base64: base64(bytes) });
  },
});

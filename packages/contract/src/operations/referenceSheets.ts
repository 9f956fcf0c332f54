import { ok } from '@panewright/quantity';
import { z } from 'zod';
import { onePdf, pdfOf, renderers } from './onePdf.ts';
import { computation } from './operation.ts';

export const referenceSheets = computation({
  summary: 'The four sheets to print and lay about a traced film before it is photographed, as one PDF.',
  input: z.strictObject({
    paper: z.enum(['A4', 'Letter']),
    date: z.optional(z.iso.date()).describe('written in the file as the day of making'),
  }),
  output: z.strictObject(onePdf),
  example: { paper: 'A4', date: '2026-11-25' },
  run: async ({ paper, date }, tools) => {
    const by = await renderers(tools);
    const sheet = by.drawing.referencePages({ paper, metrics: by.fonts.metrics });
    return ok(await pdfOf(sheet, { date, id: paper, author: 'Panewright', language: 'en' }, by));
  },
});

import { type Catalogue, defaultCatalogue, id, label, language, unitName } from '@panewright/design';
import { ok, refuse } from '@panewright/quantity';
import { z } from 'zod';
import { labelOptions } from '../sheets/sheetChoices.ts';
import { catalogueOrDefault } from './computations.ts';
import { onePdf, pdfOf, renderers } from './onePdf.ts';
import { computation } from './operation.ts';

const exampleShop: Catalogue = {
  ...defaultCatalogue,
  offcuts: [
    {
      ...{ id: 'offcut1', name: 'Van L1-1', fabric: 'mesh-black', along: 820, across: 610, place: 'shelf 2' },
      ...{ worth: 940, batch: 'B 17', notes: '' },
      from: { job: 'van', jobName: 'Van', lay: 'L1', date: '2026-11-20' },
    },
  ],
};

export const offcutLabels = computation({
  summary: 'A label with a QR code for each offcut kept in stock, as one PDF.',
  input: z.strictObject({
    catalogue: catalogueOrDefault,
    offcuts: z
      .optional(z.array(id).max(500))
      .describe('which, by id; those not yet cut for a job where left out'),
    units: unitName,
    stock: label(60).describe('a sheet of labels by its name, as 99 × 38 mm, 2 × 7'),
    start: z.optional(z.int()).describe('first label to print on, from 1: left to right, then down'),
    copies: z.optional(z.int()).describe('of each label; 1'),
    edges: z.optional(z.boolean()).describe('draws each label’s edge, for plain paper'),
    language: z.optional(language).describe('the shop’s where left out'),
    date: z.optional(z.iso.date()).describe('written in the file as the day of making'),
  }),
  output: z.strictObject({
    ...onePdf,
    labels: z.int().describe('how many offcuts have one'),
  }),
  documents: { catalogue: 'catalogue' },
  example: { catalogue: exampleShop, units: 'mm', stock: '99 × 38 mm, 2 × 7', date: '2026-11-25' },
  run: async (asked, tools) => {
    const shop = asked.catalogue ?? defaultCatalogue;
    const by = await renderers(tools);
    const { stock, start, copies, edges, units } = asked;
    const chosen = labelOptions({ labels: { stock, start, copies, edges } }, by.drawing.LABEL_STOCKS);
    if (!chosen.ok) return refuse({ code: 'SHEETS_REFUSED', refusal: chosen.refusal } as const);
    const spoken = asked.language ?? shop.shop.language ?? 'en';
    const offcuts = (shop.offcuts ?? []).filter((one) =>
      asked.offcuts ? asked.offcuts.includes(one.id) : one.used === undefined,
    );
    if (offcuts.length === 0)
      return refuse({ code: 'SHEETS_REFUSED', refusal: { code: 'NO_OFFCUTS_TO_LABEL' } } as const);
    const options = { units, metrics: by.fonts.metrics, language: spoken };
    const sheet = by.drawing.offcutLabels(offcuts, shop, options, chosen.value!);
    if (!sheet.ok) return refuse({ code: 'SHEETS_REFUSED', refusal: sheet.refusal } as const);
    const look = { date: asked.date, id: 'offcut-labels', author: shop.shop.name, language: spoken };
    return ok({ ...(await pdfOf(sheet.value, look, by)), labels: offcuts.length });
  },
});

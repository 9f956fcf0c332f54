import { defaultCatalogue, derive, type Finding, job, label } from '@panewright/design';
import { ok } from '@panewright/quantity';
import { z } from 'zod';
import { inOne } from '../answers/answers.ts';
import { sayFinding } from '../answers/sayFinding.ts';
import { showOf } from '../answers/show.ts';
import { base64 } from '../base64.ts';
import { exampleJob } from '../examples.ts';
import { summaryLines } from '../summary.ts';
import { utf8 } from '../utf8.ts';
import { catalogueOrDefault, effort, seed } from './computations.ts';
import { computation } from './operation.ts';

const file = z.strictObject({
  path: z.string().describe('where it is filed, with / between folders'),
  title: z.string(),
  mediaType: z.string(),
  base64: z.string(),
});

export const sheets = computation({
  summary: 'Every sheet, pattern and cut file of a job, and its plan, as files.',
  input: z.strictObject({
    job,
    catalogue: catalogueOrDefault,
    seed: z.optional(seed),
    effort: z.optional(effort),
    paper: z
      .optional(z.enum(['letter', 'a4']))
      .describe('letter for jobs in inches, a4 for mm where left out'),
    date: z.iso.date().describe('printed on the sheets'),
    revision: z.optional(label(40)).describe('printed on the sheets'),
  }),
  output: z.strictObject({
    files: z.array(file),
    summary: z.array(z.string()),
    stops: z.int().describe('how many findings say that a part cannot be made as it stands'),
  }),
  documents: { job: 'job', catalogue: 'catalogue' },
  example: { job: exampleJob, seed: 1, date: '2026-11-25', revision: '1' },
  run: async (input, { fonts: fontBytes }) => {
    if (!fontBytes) throw new Error('the sheets need fonts, and this door gives none');
    // Loaded when first asked for: the renderers are the largest part of the program.
    const [{ laysOf, piecesOf, sheetsOf }, { loadFonts, renderFiles }] = await Promise.all([
      import('@panewright/drawing'),
      import('@panewright/render'),
    ]);
    const shop = input.catalogue ?? defaultCatalogue;
    const plan = derive(input.job, shop, input.seed ?? 1, input.effort);
    const show = showOf(input.job, shop);
    const fonts = loadFonts(await fontBytes());
    const options = {
      paper: input.paper ?? (input.job.units === 'in' ? ('letter' as const) : ('a4' as const)),
      units: input.job.units,
      date: input.date,
      revision: input.revision ?? '',
      metrics: fonts.metrics,
      say: (finding: Finding) => inOne(sayFinding(finding, show)),
    };
    const drawing = { plan, job: input.job, catalogue: shop, options };
    const drawn = sheetsOf(drawing);
    const planText = `${JSON.stringify(plan, null, 1)}\n`;
    const rendered = await renderFiles(
      { sheets: drawn, pieces: piecesOf(drawing), lays: laysOf(drawing) },
      {
        fonts,
        date: input.date,
        id: `${planText}${JSON.stringify(input)}`,
        author: shop.shop.name,
        language: 'en',
        dxf: ['R12', 'AC1015'],
      },
    );
    const titles = new Map(drawn.map(({ path, title }) => [path, title]));
    const files = rendered.map(({ path, mime, bytes }) =>
      made(path, titles.get(stem(path)) ?? stem(path), mime, bytes),
    );
    files.push(made('plan.json', 'Plan', 'application/json', utf8(planText)));
    const stops = plan.findings.filter(({ severity }) => severity === 'stop').length;
    return ok({ files, summary: summaryLines(plan, shop, show), stops });
  },
});

const stem = (path: string) => path.replace(/\.\w+$/, '');

const made = (path: string, title: string, mediaType: string, bytes: Uint8Array) => ({
  path,
  title,
  mediaType,
  base64: base64(bytes),
});

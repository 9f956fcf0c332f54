import {
  type Catalogue,
  defaultCatalogue,
  derive,
  type Finding,
  job,
  label,
  MOST_OFFERS,
  type Offer,
  offer,
  type Plan,
  type PricedOffer,
  priceOffer,
} from '@panewright/design';
import type { Sheet, SheetInput, SheetOptions } from '@panewright/drawing';
import { ok, type Result, refuse } from '@panewright/quantity';
import type { RenderedFile, RenderOptions } from '@panewright/render';
import { z } from 'zod';
import { inOne } from '../answers/answers.ts';
import { findingWords } from '../answers/findingWords.ts';
import { sayFindingIn } from '../answers/sayFinding.ts';
import { type Language, showOf } from '../answers/show.ts';
import { base64 } from '../base64.ts';
import { exampleJob } from '../examples.ts';
import type { Tools } from '../ports.ts';
import type { Refusal } from '../refusal.ts';
import {
  knownOffers,
  labelOptions,
  type SettledChoices,
  type SheetsRefusal,
  settle,
  sheetChoices,
} from '../sheets/sheetChoices.ts';
import { summaryLines } from '../summary.ts';
import { utf8 } from '../utf8.ts';
import { catalogueOrDefault, effort, seed } from './computations.ts';
import { renderers } from './onePdf.ts';
import { computation } from './operation.ts';

const file = z.strictObject({
  path: z.string().describe('where it is filed, with / between folders'),
  title: z.string(),
  mediaType: z.string(),
  base64: z.string(),
  pages: z.optional(z.int()).describe('of a PDF'),
  preview: z.optional(z.string()).describe('the first page as SVG, where asked for'),
  looks: z
    .optional(z.strictObject({ parts: z.array(z.string()), pages: z.array(z.array(z.int())) }))
    .describe('where it has several pages, each as SVG: its parts by their places, put together in order'),
});
type MadeFile = z.output<typeof file>;

const input = z.strictObject({
  job,
  catalogue: catalogueOrDefault,
  seed: z.optional(seed),
  effort: z.optional(effort),
  date: z.iso.date().describe('printed on the sheets'),
  revision: z.optional(label(40)).describe('printed on the sheets'),
  previews: z.optional(z.boolean()).describe('a picture of each page of the sheets besides'),
  offers: z
    .optional(z.array(offer).max(MOST_OFFERS))
    .describe('alternatives the quote gives a price for; the job’s own where left out'),
  ...sheetChoices,
});
type Input = z.output<typeof input>;

export const sheets = computation({
  summary: 'Every sheet, pattern and cut file of a job, and its plan, as files.',
  input,
  output: z.strictObject({
    files: z.array(file),
    summary: z.array(z.string()),
    stops: z.int().describe('how many findings say that a part cannot be made as it stands'),
  }),
  documents: { job: 'job', catalogue: 'catalogue' },
  example: { job: exampleJob, seed: 1, date: '2026-11-25', revision: '1' },
  run: async (asked, tools) => {
    const shop = asked.catalogue ?? defaultCatalogue;
    const settled = settle(asked, asked.job, shop);
    if (!settled.ok) return refused(settled.refusal);
    return made(asked, shop, settled.value, tools);
  },
});

const refused = (refusal: SheetsRefusal) => refuse({ code: 'SHEETS_REFUSED', refusal } as const);

interface Made {
  readonly files: MadeFile[];
  readonly summary: string[];
  readonly stops: number;
}

async function made(
  asked: Input,
  shop: Catalogue,
  settled: SettledChoices,
  tools: Tools,
): Promise<Result<Made, Refusal>> {
  const { progress } = tools;
  const { drawing, render, fonts } = await renderers(tools);
  const options = sheetOptions(asked, shop, settled, fonts.metrics);
  const checked = drawing.checkSheetOptions(options);
  if (!checked.ok) return refused(checked.refusal);
  const { logo } = shop.shop;
  if (logo && !(drawing.imageSize(logo) && (await render.canEmbed(logo))))
    return refused({ code: 'LOGO_UNREADABLE' });
  const labels = labelOptions(asked, drawing.LABEL_STOCKS);
  if (!labels.ok) return refused(labels.refusal);
  const wanted = asked.offers ?? asked.job.offers ?? [];
  const known = knownOffers(wanted, shop);
  if (!known.ok) return refused(known.refusal);
  const { plan, offers } = planned(asked, shop, wanted, progress);
  const input: SheetInput = { plan, job: asked.job, catalogue: shop, offers, options };
  const label = labels.value && drawing.labelSheet(input, labels.value);
  if (label?.ok === false) return refused(label.refusal);
  const planText = `${JSON.stringify(plan, null, 1)}\n`;
  const to = renderOptions(asked, shop, settled, render.textId(`${planText}${JSON.stringify(asked)}`), fonts);
  const files: MadeFile[] = [];
  const add = (all: readonly RenderedFile[]) => {
    for (const { path, mime, bytes } of all)
      files.push(madeFile(path, path.replace(/\.\w+$/, ''), mime, bytes));
  };
  const addSheet = async (sheet: Sheet) => {
    const look = asked.previews
      ? {
          preview: render.pageSvg(sheet, 0, fonts.metrics),
          ...(sheet.pages.length > 1 ? { looks: render.pagesSvg(sheet, fonts.metrics) } : {}),
        }
      : {};
    for (const { path, mime, bytes } of await render.sheetFiles(sheet, to))
      files.push({
        ...madeFile(path, sheet.title, mime, bytes),
        ...(mime === 'application/pdf' ? { pages: sheet.pages.length, ...look } : {}),
      });
  };
  const of = drawing.sheetsAtMost(input) + 2;
  let done = 1;
  progress?.(done, of, 'sheets');
  for (const sheet of drawing.eachSheet(input)) {
    await addSheet(sheet);
    progress?.(++done, of, 'sheets');
  }
  if (label?.value.pages.length) await addSheet(label.value);
  for (const piece of drawing.piecesOf(input)) add(render.pieceFiles(piece, to));
  const lays = drawing.laysOf(input);
  for (const lay of lays) add(render.layFiles(lay, lays.length, to));
  for (const { opening, name } of plan.openings) {
    const seen = drawing.finishedPanel(plan, shop.fabrics, opening);
    if (seen)
      files.push(
        madeFile(`pictures/${opening}.svg`, name, 'image/svg+xml', utf8(render.seenSvg(seen, name))),
      );
  }
  files.push(madeFile('plan.json', 'Plan', 'application/json', utf8(planText)));
  progress?.(of, of, 'sheets');
  return ok({ files, summary: summaryLines(plan, shop, showOf(asked.job, shop)), stops: stopsOf(plan) });
}

/** The plan, and one for each alternative, each told of as a share of them all. */
function planned(
  { job: of, seed: asked = 1, effort: budget }: Input,
  shop: Catalogue,
  wanted: readonly Offer[],
  progress: Tools['progress'],
): { readonly plan: Plan; readonly offers: readonly PricedOffer[] } {
  const told = (index: number) => (done: number, all: number) =>
    progress?.(index * all + done, (wanted.length + 1) * all, 'plan');
  return {
    plan: derive(of, shop, asked, budget, told(0)),
    offers: wanted.map((one, index) => priceOffer(of, shop, one, asked, budget, told(index + 1))),
  };
}

const stopsOf = (plan: Plan): number => plan.findings.filter(({ severity }) => severity === 'stop').length;

function sheetOptions(
  { job: of, date, revision = '', type, templateCopies, printerTest }: Input,
  shop: Catalogue,
  settled: SettledChoices,
  metrics: SheetOptions['metrics'],
): SheetOptions {
  const shows = new Map<Language, ReturnType<typeof showOf>>();
  const show = (language: Language) => {
    const known = shows.get(language) ?? showOf(of, shop, language);
    shows.set(language, known);
    return known;
  };
  return {
    ...settled,
    ...{ units: of.units, date, revision, metrics },
    ...(type === undefined ? {} : { type }),
    ...(templateCopies === undefined ? {} : { templateCopies }),
    ...(printerTest === undefined ? {} : { printerTest }),
    say: (finding: Finding, language: Language = 'en') =>
      inOne(sayFindingIn(findingWords[language], finding, show(language))),
  };
}

function renderOptions(
  { date, hpgl }: Input,
  shop: Catalogue,
  { language }: SettledChoices,
  id: string,
  fonts: RenderOptions['fonts'],
): RenderOptions {
  const plot = hpgl && {
    ...(hpgl.margin === undefined ? {} : { margin: hpgl.margin }),
    ...(hpgl.names === undefined ? {} : { names: hpgl.names }),
    ...(hpgl.knife === undefined ? {} : { knife: hpgl.knife }),
  };
  return {
    ...{ fonts, date, id, author: shop.shop.name, language, dxf: ['R12', 'AC1015'] },
    ...(plot === undefined ? {} : { hpgl: plot }),
  };
}

const madeFile = (path: string, title: string, mediaType: string, bytes: Uint8Array): MadeFile => ({
  ...{ path, title, mediaType, base64: base64(bytes) },
});

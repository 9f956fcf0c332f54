import type { Catalogue, Job, Offer } from '@panewright/design';
import { id, label, language } from '@panewright/design';
import type {
  Correction,
  LabelOptions,
  LabelRefusal,
  Language,
  Paper,
  SheetRefusal,
} from '@panewright/drawing';
import { ok, type Result, refuse } from '@panewright/quantity';
import { z } from 'zod';

/** Why sheets cannot be made as they are asked for. */
export type SheetsRefusal =
  | SheetRefusal
  | LabelRefusal
  | { readonly code: 'LOGO_UNREADABLE' }
  | { readonly code: 'PRINTER_UNKNOWN'; readonly id: string; readonly known: readonly string[] }
  | { readonly code: 'NO_OFFCUTS_TO_LABEL' }
  | { readonly code: 'LABEL_STOCK_UNKNOWN'; readonly name: string; readonly known: readonly string[] }
  | { readonly code: 'OFFER_UNKNOWN'; readonly id: string };

// Ranges of papers, corrections and copies are the drawing's own: it refuses with the numbers.
const paper = z.union([
  z.enum(['letter', 'a4', 'a3', 'tabloid']),
  z.strictObject({ kind: z.literal('roll'), width: z.number().describe('mm') }),
]);

const hpgl = z
  .strictObject({
    margin: z.optional(z.number().min(0).max(500)).describe('clear way before the first piece, mm; 10'),
    names: z.optional(z.boolean()).describe('pen 1 writes each piece’s name; yes where left out'),
    knife: z.optional(
      z.strictObject({
        offset: z.number().min(0).max(5).describe('from the axis to the tip of a trailing blade, mm'),
        overcut: z.number().min(0).max(50).describe('how far a cut runs on over its beginning, mm'),
      }),
    ),
  })
  .describe('plotter files besides: pen 1 draws, pen 2 cuts, what lies in a piece before the piece');

const labels = z
  .strictObject({
    stock: label(60).describe('a sheet of labels by its name, as 99 × 38 mm, 2 × 7'),
    kind: z.optional(z.enum(['shelf', 'sewn'])).describe('shelf where left out'),
    start: z.optional(z.int()).describe('first label to print on, from 1: left to right, then down'),
    copies: z.optional(z.int()).describe('of each panel’s label; 1'),
    edges: z.optional(z.boolean()).describe('draws each label’s edge, for plain paper'),
  })
  .describe('labels with a QR code besides');

/** What may be asked for of the sheets besides the job. */
export const sheetChoices = {
  printer: z.optional(id).describe('a printer of the catalogue: its paper and its correction'),
  paper: z
    .optional(paper)
    .describe('of the patterns; the printer’s, else letter for jobs in inches, a4 for mm'),
  correction: z
    .optional(z.strictObject({ x: z.number(), y: z.number() }))
    .describe('nominal over measured on the test page; the printer’s where left out'),
  language: z.optional(language).describe('of the sheets; the shop’s where left out'),
  type: z.optional(z.enum(['standard', 'large'])).describe('large: read from a distance'),
  templateCopies: z.optional(z.int()).describe('of each template; one full page where left out'),
  printerTest: z.optional(z.boolean()).describe('a page to measure the printer by'),
  hpgl: z.optional(hpgl),
  labels: z.optional(labels),
  address: z
    .optional(z.url({ protocol: /^https?$/ }).max(200))
    .describe('where the page is: the labels’ codes then open the panel there'),
};
const choices = z.strictObject(sheetChoices);
export type SheetChoices = z.output<typeof choices>;

/** The choices with the printer, the shop and the customer taken in. */
export interface SettledChoices {
  readonly paper: Paper;
  readonly correction?: Correction;
  readonly language: Language;
  readonly customerLanguage: Language;
}

/** @refuses PRINTER_UNKNOWN */
export function settle(
  { printer: name, paper: asked, correction: given, language: spoken }: SheetChoices,
  job: Job,
  { printers = [], shop }: Catalogue,
): Result<SettledChoices, SheetsRefusal> {
  const printer = printers.find((one) => one.id === name);
  if (name !== undefined && printer === undefined)
    return refuse({ code: 'PRINTER_UNKNOWN', id: name, known: printers.map((one) => one.id) });
  const correction = given ?? printer?.correction;
  const own = spoken ?? shop.language ?? 'en';
  return ok({
    paper: asked ?? printer?.paper ?? (job.units === 'in' ? 'letter' : 'a4'),
    ...(correction === undefined ? {} : { correction }),
    language: own,
    customerLanguage: job.customer.language ?? own,
  });
}

/** Alternatives whose materials the catalogue has. @refuses OFFER_UNKNOWN */
export function knownOffers(
  offers: readonly Offer[],
  catalogue: Catalogue,
): Result<readonly Offer[], SheetsRefusal> {
  const { fabrics, bindings, magnets, steelStrips = [], fasteners = [] } = catalogue;
  const lost = (list: readonly { readonly id: string }[], id: string | undefined) =>
    id === undefined || list.some((one) => one.id === id) ? [] : [id];
  const [id] = offers.flatMap(({ fabric, finish, hold }) => [
    ...lost(fabrics, fabric),
    ...lost(bindings, finish?.kind === 'binding' ? finish.binding : undefined),
    ...[hold?.outside, hold?.inside].flatMap((one) => lost(magnets, one)),
    ...lost(steelStrips, hold?.by?.kind === 'steel' ? hold.by.strip : undefined),
    ...lost(fasteners, hold?.by?.kind === 'fastener' ? hold.by.fastener : undefined),
  ]);
  return id === undefined ? ok(offers) : refuse({ code: 'OFFER_UNKNOWN', id });
}

/** Labels as the drawing wants them. @refuses LABEL_STOCK_UNKNOWN */
export function labelOptions(
  { labels: asked, address }: SheetChoices,
  stocks: readonly LabelOptions['stock'][],
): Result<LabelOptions | undefined, SheetsRefusal> {
  if (asked === undefined) return ok(undefined);
  const { stock: name, kind = 'shelf', start, copies, edges } = asked;
  const stock = stocks.find((one) => one.name === name);
  if (stock === undefined)
    return refuse({ code: 'LABEL_STOCK_UNKNOWN', name, known: stocks.map((one) => one.name) });
  return ok({
    ...{ kind, stock },
    ...(start === undefined ? {} : { start }),
    ...(copies === undefined ? {} : { copies }),
    ...(edges === undefined ? {} : { edges }),
    ...(address === undefined ? {} : { link: linkFrom(address) }),
  });
}

/** The address of a panel in the page; ids need no escape. */
const linkFrom =
  (address: string): NonNullable<LabelOptions['link']> =>
  ({ job, opening, revision }) =>
    `${address.replace(/\/+$/, '')}/jobs/${job}/panels/${opening}${revision === '' ? '' : `?revision=${encodeURIComponent(revision)}`}`;

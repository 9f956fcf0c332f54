import * as fontkit from '@cantoo/fontkit';
import {
  PDFDict,
  PDFDocument,
  type PDFFont,
  PDFHexString,
  PDFName,
  type PDFPage,
  type PDFRef,
  PDFString,
} from '@cantoo/pdf-lib';
import type { Face, ImageItem, Item, Page, Sheet } from '@panewright/drawing';
import { FEATURES, type Fonts } from '../fonts.ts';
import { ascii } from '../utf8.ts';
import { operators, type Target } from './operators.ts';

export interface PdfOptions {
  readonly fonts: Fonts;
  /** ISO day written as the day of making, `2026-11-25`. */
  readonly date: string;
  /** 32 hexadecimal digits: tells this file from others. */
  readonly id: string;
  readonly author: string;
  /** Language of the text, `en`. */
  readonly language: string;
}

/** Points of 1/72 in to a millimetre. @source sources.md#iso-32000 */
const POINTS_PER_MM = 72 / 25.4;

/**
 * A sheet as a PDF 1.7 file at true scale: fonts embedded as subsets, arcs within 0.001 mm, layers that a viewer can
 * show or hide, and a wish not to be scaled when printed. The same input gives the same bytes.
 *
 * @accuracy coordinates rounded to 0.001 mm
 * @source sources.md#iso-32000
 */
export async function sheetPdf(sheet: Sheet, options: PdfOptions): Promise<Uint8Array> {
  const document = await PDFDocument.create({ updateMetadata: false });
  // Each document reads the fonts anew: a font remembers which letters its glyphs were asked for by, and a subset spoils that.
  document.registerFontkit(fontkit);
  const embedded = await embedFaces(document, options.fonts);
  const layers = layerNames(sheet);
  const pictures = await embedImages(document, sheet);
  const resources = new Resources(document, embedded, layers, pictures, options.fonts);
  for (const page of sheet.pages) {
    const leaf = document.addPage([page.width * POINTS_PER_MM, page.height * POINTS_PER_MM]);
    writePage(document, leaf, page, sheet, resources);
  }
  describe(document, sheet, options);
  if (layers.length > 0) resources.declareLayers();
  return document.save({ addDefaultPage: false, updateFieldAppearances: false, objectsPerTick: Infinity });
}

/** Whether a picture can be set on a page: its bytes are what it says it is. */
export async function canEmbed({
  mediaType,
  base64,
}: Pick<ImageItem, 'mediaType' | 'base64'>): Promise<boolean> {
  const document = await PDFDocument.create({ updateMetadata: false });
  try {
    await (mediaType === 'image/png' ? document.embedPng(base64) : document.embedJpg(base64));
    return true;
  } catch {
    // Whatever the decoder met, the answer is that it cannot be read.
    return false;
  }
}

async function embedFaces(document: PDFDocument, fonts: Fonts): Promise<Record<Face, PDFFont>> {
  const embed = (face: Face) =>
    document.embedFont(fonts.bytes[face], { subset: true, features: FEATURES, customName: subsetName(face) });
  return { regular: await embed('regular'), bold: await embed('bold') };
}

/** Pictures by their text, each once. Made before the pages, which only name them. */
async function embedImages(
  document: PDFDocument,
  sheet: Sheet,
): Promise<ReadonlyMap<string, { readonly key: string; readonly ref: PDFRef }>> {
  const found = new Map<string, { readonly key: string; readonly ref: PDFRef }>();
  for (const { mediaType, base64 } of sheet.pages.flatMap(({ items }) => imagesIn(items))) {
    if (found.has(base64)) continue;
    const embed = mediaType === 'image/png' ? document.embedPng(base64) : document.embedJpg(base64);
    found.set(base64, { key: `I${found.size}`, ref: (await embed).ref });
  }
  return found;
}

const imagesIn = (items: readonly Item[]): readonly ImageItem[] =>
  items.flatMap((item) =>
    item.kind === 'image' ? [item] : item.kind === 'group' ? imagesIn(item.items) : [],
  );

/** A subset's name begins with six capitals and a plus sign. @source sources.md#iso-32000 */
const subsetName = (face: Face): string => (face === 'regular' ? 'PANEWR+Sheet' : 'PANEWB+Sheet-Bold');

/** Layers worth a switch: a sheet of text alone has none. */
function layerNames(sheet: Sheet): readonly string[] {
  const names = new Set<string>();
  const look = (items: readonly Item[]) => {
    for (const item of items)
      if (item.kind === 'group') {
        names.add(item.layer);
        look(item.items);
      }
  };
  for (const items of Object.values(sheet.symbols)) look(items);
  if (names.size === 0) return [];
  for (const page of sheet.pages) look(page.items);
  return [...names];
}

/** Fonts, layers and symbols of one document, by the names its pages use. */
class Resources {
  readonly target: Target;
  private readonly layers: ReadonlyMap<string, { readonly key: string; readonly ref: PDFRef }>;
  private readonly symbols = new Map<string, { readonly key: string; readonly ref: PDFRef }>();
  private readonly used = new Set<Face>();

  constructor(
    private readonly document: PDFDocument,
    private readonly faces: Record<Face, PDFFont>,
    layers: readonly string[],
    private readonly pictures: ReadonlyMap<string, { readonly key: string; readonly ref: PDFRef }>,
    fonts: Fonts,
  ) {
    this.layers = new Map(
      layers.map((name, index) => {
        const layer = document.context.obj({ Type: 'OCG', Name: PDFString.of(name) });
        return [name, { key: `L${index}`, ref: document.context.register(layer) }];
      }),
    );
    const coded: Record<Face, Map<string, string>> = { regular: new Map(), bold: new Map() };
    this.target = {
      metrics: fonts.metrics,
      glyphs: (text, face) => {
        this.used.add(face);
        const hex = coded[face].get(text) ?? this.faces[face].encodeText(text).toString();
        coded[face].set(text, hex);
        return { hex, font: FONT_KEYS[face] };
      },
      layer: (name) => this.layers.get(name)?.key,
      symbol: (name) => this.symbols.get(name)!.key,
      image: ({ base64 }) => this.pictures.get(base64)!.key,
    };
  }

  /** Draws a symbol once, as a form that pages show. */
  addSymbol(name: string, items: readonly Item[]): void {
    if (this.symbols.has(name)) return;
    const content = ascii(operators(items, this.target));
    const stream = this.document.context.flateStream(content, {
      Type: 'XObject',
      Subtype: 'Form',
      BBox: [-100000, -100000, 100000, 100000],
      Resources: this.dictionary(false),
    });
    this.symbols.set(name, { key: `S${this.symbols.size}`, ref: this.document.context.register(stream) });
  }

  dictionary(withSymbols: boolean): PDFDict {
    const { context } = this.document;
    const dictionary = PDFDict.withContext(context);
    const part = (name: string, entries: readonly (readonly [string, PDFRef])[]) => {
      if (entries.length === 0) return;
      const inner = PDFDict.withContext(context);
      for (const [key, ref] of entries) inner.set(PDFName.of(key), ref);
      dictionary.set(PDFName.of(name), inner);
    };
    part(
      'Font',
      [...this.used].sort().map((face) => [FONT_KEYS[face], this.faces[face].ref]),
    );
    part(
      'Properties',
      [...this.layers.values()].map(({ key, ref }) => [key, ref]),
    );
    if (withSymbols)
      part(
        'XObject',
        [...this.symbols.values(), ...this.pictures.values()].map(({ key, ref }) => [key, ref]),
      );
    return dictionary;
  }

  declareLayers(): void {
    const { context, catalog } = this.document;
    const refs = [...this.layers.values()].map(({ ref }) => ref);
    catalog.set(PDFName.of('OCProperties'), context.obj({ OCGs: refs, D: { Order: refs, ON: refs } }));
  }
}

const FONT_KEYS: Readonly<Record<Face, string>> = { regular: 'F0', bold: 'F1' };

function writePage(
  document: PDFDocument,
  leaf: PDFPage,
  page: Page,
  sheet: Sheet,
  resources: Resources,
): void {
  for (const name of symbolsUsed(page.items)) resources.addSymbol(name, sheet.symbols[name]!);
  const content = `${scaleOf(page)} cm 1 j\n${operators(page.items, resources.target)}`;
  const stream = document.context.register(document.context.flateStream(ascii(content)));
  leaf.node.set(PDFName.of('Contents'), stream);
  leaf.node.set(PDFName.of('Resources'), resources.dictionary(true));
}

/** Millimetres to points; a printer's correction is made about the middle of the page. */
function scaleOf({ width, height, correction = { x: 1, y: 1 } }: Page): string {
  const { x, y } = correction;
  const [dx, dy] = [(width * (1 - x)) / 2, (height * (1 - y)) / 2];
  return [POINTS_PER_MM * x, 0, 0, POINTS_PER_MM * y, POINTS_PER_MM * dx, POINTS_PER_MM * dy]
    .map((one) => (one === 0 ? '0' : one.toFixed(9)))
    .join(' ');
}

function symbolsUsed(items: readonly Item[]): readonly string[] {
  return items.flatMap((item) =>
    item.kind === 'use' ? [item.symbol] : item.kind === 'group' ? symbolsUsed(item.items) : [],
  );
}

function describe(document: PDFDocument, sheet: Sheet, options: PdfOptions): void {
  const { context, catalog } = document;
  document.setTitle(sheet.title);
  document.setAuthor(options.author);
  document.setCreator('Panewright');
  document.setProducer('Panewright');
  const info = context.lookup(context.trailerInfo.Info, PDFDict);
  const day = PDFString.of(`D:${options.date.replaceAll('-', '')}000000Z`);
  info.set(PDFName.of('CreationDate'), day);
  info.set(PDFName.of('ModDate'), day);
  context.trailerInfo.ID = context.obj([PDFHexString.of(options.id), PDFHexString.of(options.id)]);
  catalog.set(PDFName.of('Lang'), PDFString.of(options.language));
  catalog.set(PDFName.of('ViewerPreferences'), context.obj({ PrintScaling: 'None', DisplayDocTitle: true }));
}

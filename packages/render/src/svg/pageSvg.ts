import type { FontMetrics, ImageItem, Item, LineStyle, PathItem, Sheet, TextItem } from '@panewright/drawing';
import type { Point } from '@panewright/geometry';
import { num } from '../number.ts';
import { pathData, type ToFile } from './pathData.ts';
import { escapeXml, xmlId } from './xml.ts';

const FAMILY = "'DejaVu Sans Condensed', 'DejaVu Sans', Verdana, sans-serif";

/**
 * One page of a sheet as SVG text: real millimetres (`width` in mm, one unit of the view box a millimetre), layers as
 * groups, arcs as arcs.
 *
 * @param page from 0; a page the sheet has not is a fault and throws
 * @accuracy coordinates rounded to 0.001 mm
 * @source sources.md#svg2-paths
 */
export function pageSvg(sheet: Sheet, page: number, metrics: FontMetrics): string {
  const one = sheet.pages[page];
  if (one === undefined) throw new RangeError(`${sheet.path} has no page ${page + 1}.`);
  const { width, height } = one;
  const onPage: ToFile = ({ x, y }) => ({ x, y: height - y });
  const body = new Body(sheet, metrics, height);
  const content = body.items(one.items, onPage);
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${num(width)}mm" height="${num(height)}mm" viewBox="0 0 ${num(width)} ${num(height)}">`,
    `<title>${escapeXml(sheet.title)}</title>`,
    ...(body.definitions.length > 0 ? [`<defs>${body.definitions.join('')}</defs>`] : []),
    ...content,
    '</svg>\n',
  ].join('\n');
}

class Body {
  readonly definitions: string[] = [];
  private readonly defined = new Set<string>();

  constructor(
    private readonly sheet: Sheet,
    private readonly metrics: FontMetrics,
    private readonly height: number,
  ) {}

  items(items: readonly Item[], toFile: ToFile): string[] {
    return items.flatMap((item) => {
      if (item.kind === 'path') return [pathElement(item, toFile)];
      if (item.kind === 'text') return item.text === '' ? [] : [textElement(item, toFile, this.metrics)];
      if (item.kind === 'group')
        return [`<g class="${item.layer}">`, ...this.items(item.items, toFile), '</g>'];
      if (item.kind === 'image') return [imageElement(item, toFile)];
      this.define(item.symbol);
      const { x, y } = toFile(item.at);
      const use = `<use href="#${xmlId(item.symbol)}" x="${num(x)}" y="${num(y)}"/>`;
      if (item.window === undefined) return [use];
      const clip = `window-${this.definitions.length}`;
      const { x: left, y: low, width, height } = item.window;
      const top = this.height - low - height;
      this.definitions.push(
        `<clipPath id="${clip}"><rect x="${num(left)}" y="${num(top)}" width="${num(width)}" height="${num(height)}"/></clipPath>`,
      );
      return [`<g clip-path="url(#${clip})">${use}</g>`];
    });
  }

  private define(symbol: string): void {
    if (this.defined.has(symbol)) return;
    this.defined.add(symbol);
    const about: ToFile = ({ x, y }: Point) => ({ x, y: -y });
    const drawn = this.items(this.sheet.symbols[symbol] ?? [], about).join('');
    this.definitions.push(`<g id="${xmlId(symbol)}">${drawn}</g>`);
  }
}

function imageElement({ at, width, height, mediaType, base64 }: ImageItem, toFile: ToFile): string {
  const { x, y } = toFile(at);
  const box = `x="${num(x)}" y="${num(y - height)}" width="${num(width)}" height="${num(height)}"`;
  return `<image ${box} href="data:${mediaType};base64,${base64}"/>`;
}

function pathElement(item: PathItem, toFile: ToFile): string {
  const fill = item.fill ?? 'none';
  return `<path d="${pathData(item, toFile)}" fill="${fill}"${item.line === undefined ? '' : stroke(item.line)}/>`;
}

export function stroke({ weight, dash, colour }: LineStyle): string {
  const dashes = dash === undefined ? '' : ` stroke-dasharray="${dash.map(num).join(' ')}"`;
  return ` stroke="${colour}" stroke-width="${num(weight)}"${dashes}`;
}

/** The text's width is stated, so that it keeps to its place where the font is another. */
function textElement(item: TextItem, toFile: ToFile, metrics: FontMetrics): string {
  const { x, y } = toFile(item.at);
  const width = metrics.width(item.text, item.face) * item.size;
  const turned =
    item.turn === 0 ? '' : ` transform="rotate(${num((-item.turn * 180) / Math.PI)} ${num(x)} ${num(y)})"`;
  const bold = item.face === 'bold' ? ' font-weight="bold"' : '';
  return `<text x="${num(x)}" y="${num(y)}" font-family="${FAMILY}" font-size="${num(item.size)}"${bold} text-anchor="${item.anchor}" textLength="${num(width)}" lengthAdjust="spacingAndGlyphs" fill="${item.colour}"${turned}>${escapeXml(item.text)}</text>`;
}

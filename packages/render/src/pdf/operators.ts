import {
  arcThrough,
  type FontMetrics,
  type ImageItem,
  type Item,
  type LineStyle,
  type PathItem,
  type TextItem,
} from '@panewright/drawing';
import { num } from '../number.ts';

/** What the operators need from the document they go into. */
export interface Target {
  readonly metrics: FontMetrics;
  /** Glyphs of a text as a hexadecimal string, and the name its face has in the document. */
  readonly glyphs: (text: string, face: TextItem['face']) => { readonly hex: string; readonly font: string };
  /** Name the layer has in the document; undefined where layers are not written. */
  readonly layer: (name: string) => string | undefined;
  readonly symbol: (name: string) => string;
  /** Name a picture has in the document. */
  readonly image: (image: ImageItem) => string;
}

/** Farthest a curve may leave its arc, mm: half of what the numbers are rounded to. */
const CURVE_ERROR = 0.0005;

/** Drawing operators of items, in mm, y up. @source sources.md#iso-32000 */
export function operators(items: readonly Item[], target: Target): string {
  const lines: string[] = [];
  write(items, target, lines);
  return lines.join('\n');
}

function write(items: readonly Item[], target: Target, lines: string[]): void {
  for (const item of items) {
    if (item.kind === 'path') writePath(item, lines);
    else if (item.kind === 'text') writeText(item, target, lines);
    else if (item.kind === 'group') {
      const layer = target.layer(item.layer);
      if (layer !== undefined) lines.push(`/OC /${layer} BDC`);
      write(item.items, target, lines);
      if (layer !== undefined) lines.push('EMC');
    } else if (item.kind === 'image') writeImage(item, target, lines);
    else {
      lines.push('q');
      if (item.window !== undefined) {
        const { x, y, width, height } = item.window;
        lines.push(`${num(x)} ${num(y)} ${num(width)} ${num(height)} re W n`);
      }
      lines.push(`1 0 0 1 ${num(item.at.x)} ${num(item.at.y)} cm /${target.symbol(item.symbol)} Do`, 'Q');
    }
  }
}

/** A picture fills the unit square, which is made as large as it is. @source sources.md#iso-32000 */
function writeImage(image: ImageItem, target: Target, lines: string[]): void {
  const { at, width, height } = image;
  lines.push(
    'q',
    `${num(width)} 0 0 ${num(height)} ${num(at.x)} ${num(at.y)} cm /${target.image(image)} Do`,
    'Q',
  );
}

function writePath(path: PathItem, lines: string[]): void {
  if (path.fill === undefined && path.line === undefined) return;
  if (path.fill !== undefined) lines.push(`${colour(path.fill)} rg`);
  if (path.line !== undefined) lines.push(lineState(path.line));
  lines.push(`${num(path.start.x)} ${num(path.start.y)} m`);
  let from = path.start;
  for (const segment of path.segments) {
    if (segment.kind === 'line') lines.push(`${num(segment.to.x)} ${num(segment.to.y)} l`);
    else lines.push(...curves(from, segment.to, segment.bulge));
    from = segment.to;
  }
  if (path.closed) lines.push('h');
  lines.push(path.fill === undefined ? 'S' : path.line === undefined ? 'f' : 'B');
}

function lineState({ weight, dash = [], colour: ink }: LineStyle): string {
  return `${colour(ink)} RG ${num(weight)} w [${dash.map(num).join(' ')}] 0 d`;
}

/** `#rrggbb` as three ratios. */
function colour(hex: string): string {
  return [1, 3, 5].map((at) => num(Number.parseInt(hex.slice(at, at + 2), 16) / 255)).join(' ');
}

/**
 * An arc as cubic curves, enough of them that none leaves it by more than CURVE_ERROR: a quarter turn in one curve is
 * out by 2.7e-4 of the radius, and the error falls with the sixth power of the angle.
 *
 * @source sources.md#goldapp-1991
 */
function curves(from: PathItem['start'], to: PathItem['start'], bulge: number): string[] {
  const { centre, radius, start, sweep } = arcThrough(from, to, bulge);
  const quarters = Math.abs(sweep) / (Math.PI / 2);
  const count = Math.max(
    Math.ceil(quarters),
    Math.ceil(quarters * ((2.8e-4 * radius) / CURVE_ERROR) ** (1 / 6)),
  );
  const step = sweep / count;
  const reach = (4 / 3) * Math.tan(step / 4) * radius;
  return Array.from({ length: count }, (_, index) => {
    const [a, b] = [start + index * step, start + (index + 1) * step];
    const end =
      index === count - 1 ? to : { x: centre.x + radius * Math.cos(b), y: centre.y + radius * Math.sin(b) };
    return [
      centre.x + radius * Math.cos(a) - reach * Math.sin(a),
      centre.y + radius * Math.sin(a) + reach * Math.cos(a),
      centre.x + radius * Math.cos(b) + reach * Math.sin(b),
      centre.y + radius * Math.sin(b) - reach * Math.cos(b),
      end.x,
      end.y,
    ]
      .map(num)
      .join(' ')
      .concat(' c');
  });
}

function writeText(item: TextItem, target: Target, lines: string[]): void {
  if (item.text === '') return;
  const { hex, font } = target.glyphs(item.text, item.face);
  const width = target.metrics.width(item.text, item.face) * item.size;
  const back = item.anchor === 'start' ? 0 : item.anchor === 'middle' ? width / 2 : width;
  const cos = Math.cos(item.turn);
  const sin = Math.sin(item.turn);
  const [x, y] = [item.at.x - back * cos, item.at.y - back * sin];
  const matrix = [cos, sin, -sin, cos].map((one) => num6(one)).join(' ');
  lines.push(
    `${colour(item.colour)} rg BT /${font} ${num(item.size)} Tf ${matrix} ${num(x)} ${num(y)} Tm ${hex} Tj ET`,
  );
}

/** Ratios of a turn take more decimals than lengths do. */
const num6 = (value: number): string => `${Number(value.toFixed(6)) + 0}`.replace(/^-0$/, '0');

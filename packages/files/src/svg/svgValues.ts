import { ok, type Result, refuse } from '@panewright/quantity';
import { type Affine, chained, IDENTITY, scaling, shifting, turning } from '../curve/affine.ts';
import type { FilePlace, FileRefusal, FileUnit } from '../fileRefusal.ts';
import type { XmlElement } from './readXml.ts';

export const NUMBER = '[+-]?(?:\\d+\\.?\\d*|\\.\\d+)(?:[eE][+-]?\\d+)?';
const LENGTH = new RegExp(`^\\s*(${NUMBER})\\s*(px|mm|cm|in|pt|pc|Q|q|%|)\\s*$`);
const MOST_NUMBER = 1e12;

/** CSS pixels in a unit: 96 to the inch. @source sources.md#css-values-lengths */
const PIXELS: Readonly<Record<string, number>> = {
  ...{ px: 1, '': 1, in: 96, cm: 96 / 2.54, mm: 96 / 25.4, q: 96 / 101.6 },
  ...{ pt: 96 / 72, pc: 16 },
};

export interface SvgLength {
  readonly value: number;
  readonly unit: string;
}

/** The size of the view a percentage is of, user units. */
export interface Viewport {
  readonly width: number;
  readonly height: number;
}

export const localName = (name: string): string | undefined => {
  const [prefix, local] = name.includes(':') ? (name.split(':', 2) as [string, string]) : ['', name];
  return prefix === '' || prefix === 'svg' ? local : undefined;
};

export const placeOf = (element: XmlElement): FilePlace => {
  const id = element.attributes.get('id');
  return { line: element.line, entity: element.name, ...(id ? { id } : {}) };
};

/** A length attribute as written, or undefined where there is none (or `auto`). */
export function lengthOf(element: XmlElement, name: string): Result<SvgLength | undefined, FileRefusal> {
  const text = element.attributes.get(name);
  if (text === undefined || text.trim() === 'auto') return ok(undefined);
  const found = LENGTH.exec(text);
  const place = placeOf(element);
  if (!found) return refuse({ code: 'NUMBER_UNREADABLE', place, what: name, text: text.slice(0, 40) });
  const value = Number(found[1]);
  if (!(Math.abs(value) <= MOST_NUMBER))
    return refuse({ code: 'NUMBER_OUT_OF_RANGE', place, what: name, value });
  return ok({ value, unit: found[2]!.toLowerCase() });
}

/** Attributes in user units, 0 where absent unless `otherwise` says. A percentage is of the view. */
export function userLengths<K extends string>(
  element: XmlElement,
  names: readonly K[],
  view: Viewport,
): Result<Readonly<Record<K, number | undefined>>, FileRefusal> {
  const values: Partial<Record<K, number | undefined>> = {};
  for (const name of names) {
    const length = lengthOf(element, name);
    if (!length.ok) return length;
    values[name] = length.value && inUserUnits(length.value, name, view);
  }
  return ok(values as Record<K, number | undefined>);
}

function inUserUnits({ value, unit }: SvgLength, name: string, { width, height }: Viewport): number {
  if (unit !== '%') return value * PIXELS[unit]!;
  const isAcross = /^(?:x|cx|rx|x1|x2|width)$/.test(name);
  const isUp = /^(?:y|cy|ry|y1|y2|height)$/.test(name);
  const whole = isAcross ? width : isUp ? height : Math.hypot(width, height) / Math.SQRT2;
  return (value / 100) * whole;
}

const PHYSICAL: Readonly<Record<string, FileUnit>> = {
  mm: 'mm',
  cm: 'cm',
  in: 'in',
  pt: 'pt',
  pc: 'pt',
  q: 'mm',
};

/** Millimetres of a length in a physical unit; undefined for pixels and percentages. */
export const millimetresOf = ({ value, unit }: SvgLength): number | undefined =>
  unit in PHYSICAL ? value * PIXELS[unit]! * (25.4 / 96) : undefined;
export const physicalUnit = ({ unit }: SvgLength): FileUnit | undefined => PHYSICAL[unit];
export const pixelsOf = ({ value, unit }: SvgLength): number | undefined =>
  unit === '' || unit === 'px' ? value : undefined;

/** Numbers of a list such as `viewBox` or `points`. */
export function numbersOf(
  element: XmlElement,
  name: string,
): Result<readonly number[] | undefined, FileRefusal> {
  const text = element.attributes.get(name);
  if (text === undefined) return ok(undefined);
  return listed(text, placeOf(element), name);
}

function listed(text: string, place: FilePlace, what: string): Result<readonly number[], FileRefusal> {
  const pattern = new RegExp(`\\s*(?:,\\s*)?(${NUMBER})`, 'y');
  const numbers: number[] = [];
  let at = 0;
  for (let found = pattern.exec(text); found; found = pattern.exec(text)) {
    const value = Number(found[1]);
    if (!(Math.abs(value) <= MOST_NUMBER)) return refuse({ code: 'NUMBER_OUT_OF_RANGE', place, what, value });
    numbers.push(value);
    at = pattern.lastIndex;
  }
  const rest = text.slice(at).trim();
  return rest === ''
    ? ok(numbers)
    : refuse({ code: 'NUMBER_UNREADABLE', place, what, text: rest.slice(0, 40) });
}

const FUNCTION = /\s*,?\s*(matrix|translate|scale|rotate|skewX|skewY)\s*\(([^()]*)\)/y;

/** A `transform` attribute. @source sources.md#svg2-transforms */
export function transformOf(element: XmlElement): Result<Affine, FileRefusal> {
  const text = element.attributes.get('transform') ?? '';
  const place = placeOf(element);
  const maps: Affine[] = [];
  let at = 0;
  FUNCTION.lastIndex = 0;
  for (let found = FUNCTION.exec(text); found; found = FUNCTION.exec(text)) {
    at = FUNCTION.lastIndex;
    const numbers = listed(found[2]!, place, 'transform');
    if (!numbers.ok) return numbers;
    FUNCTION.lastIndex = at;
    const map = mapOf(found[1]!, numbers.value);
    if (!map)
      return refuse({
        code: 'NUMBER_UNREADABLE',
        place,
        what: 'transform',
        text: found[0].trim().slice(0, 40),
      });
    maps.push(map);
  }
  const rest = text.slice(at).trim();
  if (rest !== '' && rest !== 'none')
    return refuse({ code: 'NUMBER_UNREADABLE', place, what: 'transform', text: rest.slice(0, 40) });
  return ok(chained(IDENTITY, ...maps));
}

function mapOf(name: string, n: readonly number[]): Affine | undefined {
  const counts: Readonly<Record<string, readonly number[]>> = {
    ...{ matrix: [6], translate: [1, 2], scale: [1, 2], rotate: [1, 3], skewX: [1], skewY: [1] },
  };
  if (!counts[name]!.includes(n.length)) return undefined;
  const [p, q, r] = [n[0]!, n[1], n[2]];
  const angle = (p % 360) * (Math.PI / 180);
  if (name === 'matrix') return { a: p, b: q!, c: r!, d: n[3]!, e: n[4]!, f: n[5]! };
  if (name === 'translate') return shifting(p, q ?? 0);
  if (name === 'scale') return scaling(p, q ?? p);
  if (name === 'skewX') return { ...IDENTITY, c: Math.tan(angle) };
  if (name === 'skewY') return { ...IDENTITY, b: Math.tan(angle) };
  return q === undefined ? turning(angle) : chained(shifting(q, r!), turning(angle), shifting(-q, -r!));
}

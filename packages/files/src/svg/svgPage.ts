import { ok, type Result, refuse } from '@panewright/quantity';
import type { FileRefusal, FileUnit } from '../fileRefusal.ts';
import type { XmlElement } from './readXml.ts';
import {
  lengthOf,
  millimetresOf,
  numbersOf,
  physicalUnit,
  pixelsOf,
  placeOf,
  type SvgLength,
  type Viewport,
} from './svgValues.ts';

/** How the page's user units lie in the world. */
export interface SvgPage {
  readonly view: Viewport;
  /** Physical unit of its width or height, and mm to one user unit: only where a view box ties the two together. */
  readonly unit: FileUnit | undefined;
  readonly millimetres?: number;
  /** Pixels to one user unit, where the page is sized in pixels. */
  readonly pixels?: number;
  /** A user unit's height over its width, where the page stretches it unevenly. */
  readonly stretch: number;
}

export interface ViewBox {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export function viewBoxOf(element: XmlElement): Result<ViewBox | undefined, FileRefusal> {
  const numbers = numbersOf(element, 'viewBox');
  if (!numbers.ok) return numbers;
  if (numbers.value === undefined) return ok(undefined);
  const [x, y, width, height] = numbers.value;
  const place = placeOf(element);
  if (numbers.value.length !== 4)
    return refuse({ code: 'COUNT_WRONG', place, what: 'viewBox', stated: 4, found: numbers.value.length });
  for (const value of [width!, height!])
    if (!(value > 0)) return refuse({ code: 'NUMBER_OUT_OF_RANGE', place, what: 'viewBox', value });
  return ok({ x: x!, y: y!, width: width!, height: height! });
}

/**
 * The size of the root's user unit. It is known when the page is sized in mm, cm, in, pt, pc or Q and has a view box. A page
 * in pixels or of no size says nothing that can be trusted: a pixel is 1/96 in by the standard, but older programs wrote
 * 1/90 or 1/72 in; nor does a page in mm without a view box, for its user unit is again a pixel.
 *
 * @source sources.md#svg2-coords, sources.md#css-values-lengths
 */
export function svgPage(root: XmlElement): Result<SvgPage, FileRefusal> {
  const box = viewBoxOf(root);
  if (!box.ok) return box;
  const width = lengthOf(root, 'width');
  if (!width.ok) return width;
  const height = lengthOf(root, 'height');
  if (!height.ok) return height;
  for (const [what, length] of [
    ['width', width.value],
    ['height', height.value],
  ] as const)
    if (length && !(length.value > 0))
      return refuse({ code: 'NUMBER_OUT_OF_RANGE', place: placeOf(root), what, value: length.value });
  const view = box.value ?? { width: pixelSize(width.value), height: pixelSize(height.value) };
  if (box.value === undefined) return ok({ view, unit: undefined, stretch: 1 });
  const across = ratio(width.value, box.value.width, millimetresOf);
  const up = ratio(height.value, box.value.height, millimetresOf);
  const unit = (width.value && physicalUnit(width.value)) ?? (height.value && physicalUnit(height.value));
  const pixels =
    ratio(width.value, box.value.width, pixelsOf) ?? ratio(height.value, box.value.height, pixelsOf);
  if (across === undefined && up === undefined)
    return ok({ view, unit: undefined, ...(pixels === undefined ? {} : { pixels }), stretch: 1 });
  const [x, y] = [across ?? up!, up ?? across!];
  const fit = root.attributes.get('preserveAspectRatio') ?? '';
  if (/\bnone\b/.test(fit)) return ok({ view, unit, millimetres: x, stretch: y / x });
  return ok({ view, unit, millimetres: /\bslice\b/.test(fit) ? Math.max(x, y) : Math.min(x, y), stretch: 1 });
}

const ratio = (
  length: SvgLength | undefined,
  units: number,
  size: (length: SvgLength) => number | undefined,
): number | undefined => {
  const whole = length && size(length);
  return whole === undefined ? undefined : whole / units;
};

/** What percentages are of where there is no view box: the page in pixels, or nothing. */
const pixelSize = (length: SvgLength | undefined): number =>
  (length && (pixelsOf(length) ?? (millimetresOf(length) ?? 0) * (96 / 25.4))) ?? 0;

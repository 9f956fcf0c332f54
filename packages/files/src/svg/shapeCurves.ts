import type { Vector } from '@panewright/geometry';
import { ok, type Result, refuse } from '@panewright/quantity';
import type { FileCurve } from '../curve/drawing.ts';
import type { FileRefusal } from '../fileRefusal.ts';
import { lineCurves, pathCurves } from './pathCurves.ts';
import type { XmlElement } from './readXml.ts';
import { numbersOf, placeOf, userLengths, type Viewport } from './svgValues.ts';

type Subpaths = Result<readonly (readonly FileCurve[])[], FileRefusal>;
type Read = (element: XmlElement, view: Viewport) => Subpaths;

const SHAPES: ReadonlyMap<string, Read> = new Map([
  ['path', (element) => pathCurves(pathData(element), placeOf(element))],
  ['rect', readRect],
  ['circle', readCircle],
  ['ellipse', readEllipse],
  ['line', readLine],
  ['polyline', (element) => readPolygon(element, false)],
  ['polygon', (element) => readPolygon(element, true)],
] satisfies [string, Read][]);

export const isShape = (name: string) => SHAPES.has(name);

/**
 * A shape's subpaths in its own user units, y as in the file.
 *
 * @refuses values that cannot be read, negative sizes
 * @source sources.md#svg2-shapes
 */
export const shapeCurves = (name: string, element: XmlElement, view: Viewport): Subpaths =>
  SHAPES.get(name)!(element, view);

function pathData(element: XmlElement): string {
  const data = element.attributes.get('d') ?? '';
  return data.trim() === 'none' ? '' : data;
}

const ellipse = (cx: number, cy: number, rx: number, ry: number): FileCurve => ({
  ...{ kind: 'ellipse', centre: { x: cx, y: cy }, u: { x: rx, y: 0 }, v: { x: 0, y: ry } },
  ...{ start: 0, end: 2 * Math.PI },
});

/** The first size that is negative, as a refusal. */
function negative(
  element: XmlElement,
  sizes: Readonly<Record<string, number | undefined>>,
): FileRefusal | undefined {
  const bad = Object.entries(sizes).find(([, value]) => value !== undefined && value < 0);
  return bad && { code: 'NUMBER_OUT_OF_RANGE', place: placeOf(element), what: bad[0], value: bad[1]! };
}

function readRect(element: XmlElement, view: Viewport): Subpaths {
  const read = userLengths(element, ['x', 'y', 'width', 'height', 'rx', 'ry'], view);
  if (!read.ok) return read;
  const { x = 0, y = 0, width = 0, height = 0, rx: ownRx, ry: ownRy } = read.value;
  const bad = negative(element, { width, height, rx: ownRx, ry: ownRy });
  if (bad) return refuse(bad);
  if (width === 0 || height === 0) return ok([]);
  // A radius that is not given is the other one; neither is more than half the side: so the standard says.
  const rx = Math.min(ownRx ?? ownRy ?? 0, width / 2);
  const ry = Math.min(ownRy ?? ownRx ?? 0, height / 2);
  const [right, low] = [x + width, y + height];
  if (rx === 0 || ry === 0)
    return ok([
      ring([
        { x, y },
        { x: right, y },
        { x: right, y: low },
        { x, y: low },
      ]),
    ]);
  const corner = (cx: number, cy: number, start: number): FileCurve => ({
    ...(ellipse(cx, cy, rx, ry) as Extract<FileCurve, { kind: 'ellipse' }>),
    start,
    end: start + Math.PI / 2,
  });
  const side = (fromX: number, fromY: number, toX: number, toY: number) =>
    lineCurves({ x: fromX, y: fromY }, { x: toX, y: toY });
  return ok([
    [
      ...side(x + rx, y, right - rx, y),
      corner(right - rx, y + ry, -Math.PI / 2),
      ...side(right, y + ry, right, low - ry),
      corner(right - rx, low - ry, 0),
      ...side(right - rx, low, x + rx, low),
      corner(x + rx, low - ry, Math.PI / 2),
      ...side(x, low - ry, x, y + ry),
      corner(x + rx, y + ry, Math.PI),
    ],
  ]);
}

const ring = (corners: readonly Vector[]): readonly FileCurve[] =>
  corners.flatMap((from, i) => lineCurves(from, corners[(i + 1) % corners.length]!));

function readCircle(element: XmlElement, view: Viewport): Subpaths {
  const read = userLengths(element, ['cx', 'cy', 'r'], view);
  if (!read.ok) return read;
  const { cx = 0, cy = 0, r = 0 } = read.value;
  const bad = negative(element, { r });
  if (bad) return refuse(bad);
  return ok(r === 0 ? [] : [[ellipse(cx, cy, r, r)]]);
}

function readEllipse(element: XmlElement, view: Viewport): Subpaths {
  const read = userLengths(element, ['cx', 'cy', 'rx', 'ry'], view);
  if (!read.ok) return read;
  const { cx = 0, cy = 0 } = read.value;
  const rx = read.value.rx ?? read.value.ry ?? 0;
  const ry = read.value.ry ?? read.value.rx ?? 0;
  const bad = negative(element, { rx, ry });
  if (bad) return refuse(bad);
  return ok(rx === 0 || ry === 0 ? [] : [[ellipse(cx, cy, rx, ry)]]);
}

function readLine(element: XmlElement, view: Viewport): Subpaths {
  const read = userLengths(element, ['x1', 'y1', 'x2', 'y2'], view);
  if (!read.ok) return read;
  const { x1 = 0, y1 = 0, x2 = 0, y2 = 0 } = read.value;
  const curves = lineCurves({ x: x1, y: y1 }, { x: x2, y: y2 });
  return ok(curves.length === 0 ? [] : [curves]);
}

function readPolygon(element: XmlElement, isClosed: boolean): Subpaths {
  const read = numbersOf(element, 'points');
  if (!read.ok) return read;
  const numbers = read.value ?? [];
  if (numbers.length % 2 === 1)
    return refuse({
      ...{ code: 'COUNT_WRONG', place: placeOf(element), what: 'points' },
      ...{ stated: numbers.length + 1, found: numbers.length },
    });
  const corners = Array.from({ length: numbers.length / 2 }, (_, i) => ({
    x: numbers[2 * i]!,
    y: numbers[2 * i + 1]!,
  }));
  if (corners.length < 2) return ok([]);
  return ok([isClosed ? ring(corners) : corners.slice(1).flatMap((to, i) => lineCurves(corners[i]!, to))]);
}

import type { HoldPlan, PanelPlan } from '@panewright/design';
import {
  bounds,
  moveOutline,
  movePoint,
  type Outline,
  type Point,
  point,
  type Rigid,
  still,
} from '@panewright/geometry';
import { CAPITAL, INK, STYLE, WEIGHT } from '../ink.ts';
import { occupied, placeNear } from '../labelPlacer.ts';
import {
  boxOfPoints,
  circle,
  flattenPath,
  outlinePath,
  type Placing,
  placePath,
  placePoint,
} from '../path.ts';
import type { FontMetrics, Item, PathItem } from '../sheet.ts';
import { sizeFor, text, widthOf } from '../text.ts';

export interface PictureLook {
  /** Room for the picture, mm: it is drawn as large as fits. */
  readonly width: number;
  readonly height: number;
  /** Carries the pattern's frame into the opening's. */
  readonly place?: Rigid;
  /** Seen from inside: left for right. */
  readonly mirrored?: boolean;
  /** The opening behind the panel, in its own frame. */
  readonly opening?: Outline;
  /** Words beside a hold point; none where the picture is small. */
  readonly label?: (number: number) => string;
  readonly fill?: string;
  /** Pocket patches in the pattern's frame, seen through the cloth. */
  readonly pockets?: { readonly outlines: readonly Outline[]; readonly fill: string };
  /** Thin lines over the picture that labels keep clear of, made once its scale is known. */
  readonly lines?: (at: (p: Point) => Point) => readonly PathItem[];
  /** Other things on the glass, in the opening's frame. */
  readonly obstacles?: readonly Outline[];
}

export interface Picture {
  readonly items: readonly Item[];
  readonly width: number;
  readonly height: number;
  /** Takes a point of the opening's frame onto the picture. */
  readonly at: (p: Point) => Point;
}

/** Radius of a hold point's dot, mm on paper. */
const DOT = 1.1;

/** A panel drawn small: edge, band, hold points with their numbers, the opening behind it. Its corner is at the origin. */
export function panelPicture(
  panel: PanelPlan,
  hold: HoldPlan | undefined,
  metrics: FontMetrics,
  look: PictureLook,
): Picture {
  const place = look.place ?? still;
  const finished = moveOutline(place, panel.finished);
  const shown = [finished, ...(look.opening === undefined ? [] : [look.opening])];
  const placing = fit(shown, look);
  const draw = (outline: Outline, style: Pick<PathItem, 'line' | 'fill'>) =>
    placePath(outlinePath(outline, style), placing);
  const paths = [
    draw(finished, { fill: panel.band === null ? (look.fill ?? INK.wash) : INK.band }),
    ...(panel.band === null
      ? []
      : [draw(moveOutline(place, panel.band), { fill: look.fill ?? INK.wash, line: STYLE.band })]),
    ...(look.pockets?.outlines ?? []).map((one) =>
      draw(moveOutline(place, one), { fill: look.pockets!.fill }),
    ),
    ...(panel.band === null ? [] : [draw(moveOutline(place, panel.band), { line: STYLE.band })]),
    draw(finished, { line: { weight: WEIGHT.medium, colour: INK.ink } }),
    ...(look.opening === undefined ? [] : [draw(look.opening, { line: STYLE.opening })]),
    ...(look.obstacles ?? []).map((one) => draw(one, { line: STYLE.dimension, fill: INK.faint })),
  ];
  const at = (p: Point) => placePoint(p, placing);
  const thin = look.lines?.(at) ?? [];
  const dots = (hold?.points ?? []).map((one) => ({
    number: one.number,
    at: placePoint(movePoint(place, one.centre), placing),
  }));
  const circles = dots.map(({ at }) => circle(at, DOT, { fill: INK.accent }));
  const size = boxOfPoints(shown.flatMap((one) => flattenPath(placePath(outlinePath(one, {}), placing))));
  const { label } = look;
  return {
    items: [
      ...paths,
      ...thin,
      ...circles,
      ...(label === undefined ? [] : numberLabels(dots, [...paths, ...thin], circles, metrics, label, size)),
    ],
    width: size.maxX,
    height: size.maxY,
    at,
  };
}

function fit(shown: readonly Outline[], look: PictureLook): Placing {
  const boxes = shown.map(bounds);
  const [minX, minY] = [Math.min(...boxes.map((b) => b.minX)), Math.min(...boxes.map((b) => b.minY))];
  const [maxX, maxY] = [Math.max(...boxes.map((b) => b.maxX)), Math.max(...boxes.map((b) => b.maxY))];
  const scale = Math.min(look.width / (maxX - minX), look.height / (maxY - minY));
  return look.mirrored === true
    ? { mirrored: true, scale, x: maxX * scale, y: -minY * scale }
    : { scale, x: -minX * scale, y: -minY * scale };
}

function numberLabels(
  dots: readonly { readonly number: number; readonly at: Point }[],
  paths: readonly PathItem[],
  circles: readonly PathItem[],
  metrics: FontMetrics,
  label: (number: number) => string,
  size: { readonly maxX: number; readonly maxY: number },
): Item[] {
  const taken = occupied({ minX: 0, minY: 0, maxX: size.maxX, maxY: size.maxY });
  for (const path of paths) if (path.line !== undefined) taken.addLine(flattenPath(path));
  for (const path of circles) taken.addBox(boxOfPoints(flattenPath(path)));
  return dots.flatMap(({ number, at }) => {
    const words = label(number);
    const look = { capital: CAPITAL.small, face: 'bold' } as const;
    const font = sizeFor(metrics, look.capital);
    const box = {
      width: widthOf(words, metrics, look) + 0.6,
      height: font * (metrics.ascent + metrics.descent),
    };
    const middle = placeNear(taken, at, box, {
      ...{ from: 4, to: 28, towards: Math.atan2(size.maxY / 2 - at.y, size.maxX / 2 - at.x) },
    });
    if (middle === undefined) return [];
    const base = point(middle.x, middle.y - (font * (metrics.ascent - metrics.descent)) / 2);
    return [text(words, base, metrics, { ...look, anchor: 'middle' })];
  });
}

import { markerCorner } from '../referenceSheet.ts';
import type { Draw } from './draw.ts';
import { onSheet, type PlacedSheet } from './paintFilm.ts';
import type { Surface } from './photograph.ts';
import { along, type Xy } from './sceneOutline.ts';
import { type Truth, trueExtent } from './score.ts';

/** What a maker has, as read, and what a scorer needs; in the form of the given truths. */
export function truthOf(
  random: Draw,
  segments: Truth['outline']['segments'],
  sheets: readonly PlacedSheet[],
  scale: Xy,
  surface: Surface,
): Truth {
  const corners = Object.fromEntries(
    [0, 1, 2, 3].map((k) => [
      String(k),
      [0, 1, 2, 3].map((c): Xy => {
        const { x, y } = markerCorner('A4', k, c);
        return [x, y];
      }),
    ]),
  );
  const place = (marker: number, corner: number) => {
    const sheet = sheets.find(({ index }) => index === marker >> 2)!;
    const nominal = markerCorner('A4', marker & 3, corner);
    const { x, y } = onSheet(sheet, scale, nominal.x, nominal.y);
    return [x, y, surface(x, y)] as const;
  };
  const all = sheets.flatMap(({ index }) => [0, 1, 2, 3].map((k) => 4 * index + k));
  const tape = longAndShort(all, place).map(([from, to]) => {
    const [a, b] = [place(...from), place(...to)];
    const length = Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]);
    return {
      from_marker: from[0],
      from_corner: from[1],
      to_marker: to[0],
      to_corner: to[1],
      measured_mm: Math.round(10 * (length + random.normal(0.5))) / 10,
      sigma_mm: 0.5,
    };
  });
  const read = (nominal: number, factor: number) =>
    Math.round(100 * (nominal * factor + random.normal(0.15))) / 100;
  const [left, low, right, high] = trueExtent(segments.flatMap((s) => along(s, 0.05)));
  return {
    outline: {
      segments,
      bbox: [
        [left, low],
        [right, high],
      ],
    },
    reference: {
      nominal_marker_corners_mm: corners,
      ruler_check: { measured_x_mm: read(200, scale[0]), measured_y_mm: read(150, scale[1]) },
    },
    tape,
  };
}

type Corner = readonly [number, number];

/** The longest distance between outer corners, and the longest that runs mostly across it. */
function longAndShort(
  markers: readonly number[],
  place: (marker: number, corner: number) => readonly [number, number, number],
): [Corner, Corner][] {
  const pairs: { ends: [Corner, Corner]; along: number; across: number }[] = [];
  for (const a of markers) {
    for (const b of markers) {
      if (a >> 2 >= b >> 2) continue;
      const [p, q] = [place(a, a & 3), place(b, b & 3)];
      pairs.push({
        ends: [
          [a, a & 3],
          [b, b & 3],
        ],
        along: Math.abs(p[0] - q[0]),
        across: Math.abs(p[1] - q[1]),
      });
    }
  }
  const best = (value: (pair: (typeof pairs)[number]) => number) =>
    pairs.reduce((x, y) => (value(y) > value(x) ? y : x)).ends;
  return [best(({ along: u, across: v }) => u - v), best(({ along: u, across: v }) => v - u)];
}

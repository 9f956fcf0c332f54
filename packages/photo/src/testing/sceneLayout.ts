import type { Draw } from './draw.ts';
import type { Point } from './film.ts';
import { onSheet, type PlacedSheet } from './paintFilm.ts';
import type { Surface } from './photograph.ts';
import type { Level } from './sceneLevel.ts';
import type { Xy } from './sceneOutline.ts';
import { trueExtent } from './score.ts';

export function sheetCorners(sheets: readonly PlacedSheet[], scale: Xy): Point[] {
  const ends = [
    [2, 2],
    [295, 2],
    [295, 208],
    [2, 208],
  ] as const;
  return sheets.flatMap((sheet) => ends.map(([x, y]) => onSheet(sheet, scale, x, y)));
}

/** Near the four corners, inside, or beside the short sides, outside; turned a little, some by a quarter. */
export function placeSheets(
  random: Draw,
  line: readonly Xy[],
  outside: boolean,
  count: number,
): PlacedSheet[] {
  const box = trueExtent(line);
  const middle = { x: (box[0] + box[2]) / 2, y: (box[1] + box[3]) / 2 };
  const quarters = [
    [-1, 1],
    [1, 1],
    [1, -1],
    [-1, -1],
  ] as const;
  const turned = random.chance(0.5) ? random.whole(1, 2) : 0;
  return quarters.slice(0, count).map(([sx, sy], index) => {
    const quarter = index >= 1 && index <= turned ? Math.PI / 2 : 0;
    const angle = (outside ? (sx * -Math.PI) / 2 : quarter) + random.normal(0.02);
    const upright = Math.abs(Math.sin(angle)) > 0.7;
    const [w, h] = upright ? [105, 148.5] : [148.5, 105];
    for (let inset = outside ? 30 : 16; ; inset += 8) {
      const x = outside
        ? sx > 0
          ? box[2] + inset + w
          : box[0] - inset - w
        : sx > 0
          ? box[2] - inset - w
          : box[0] + inset + w;
      const y = outside
        ? middle.y + sy * (h + random.between(25, 50))
        : sy > 0
          ? box[3] - inset - h
          : box[1] + inset + h;
      const sheet = { index, angle, x: x + random.normal(4), y: y + random.normal(4) };
      if (outside || inset > 400 || clearOf(sheet, line)) return sheet;
    }
  });
}

function clearOf(sheet: PlacedSheet, line: readonly Xy[]): boolean {
  const [c, s] = [Math.cos(sheet.angle), Math.sin(sheet.angle)];
  return line.every(([x, y]) => {
    const u = Math.abs(c * (x - sheet.x) + s * (y - sheet.y));
    const v = Math.abs(-s * (x - sheet.x) + c * (y - sheet.y));
    return u > 148.5 + 6 || v > 105 + 6;
  });
}

/** Waves of about a metre and short folds. */
export function makeSurface(random: Draw, level: Level, flat: boolean): Surface {
  if (flat) return () => 0;
  const zone = random.between(...level.zone);
  const waves = Array.from({ length: 5 }, () => {
    const angle = random.between(0, Math.PI);
    const k = (2 * Math.PI) / random.between(650, 1700);
    return { kx: k * Math.cos(angle), ky: k * Math.sin(angle), phase: random.between(0, 6.28) };
  });
  const folds = Array.from({ length: random.whole(...level.folds) }, () => ({
    x: random.between(-650, 650),
    y: random.between(-350, 350),
    angle: random.between(0, Math.PI),
    long: random.between(40, 160),
    wide: random.between(8, 25),
    high: random.between(-0.4, 0.4) * zone,
  }));
  return (x, y) => {
    let z = 0;
    for (const { kx, ky, phase } of waves) z += Math.cos(kx * x + ky * y + phase);
    z *= 0.22 * zone;
    for (const { x: fx, y: fy, angle, long, wide, high } of folds) {
      const u = (Math.cos(angle) * (x - fx) + Math.sin(angle) * (y - fy)) / long;
      const v = (-Math.sin(angle) * (x - fx) + Math.cos(angle) * (y - fy)) / wide;
      const r = u * u + v * v;
      if (r < 9) z += high * Math.exp(-r);
    }
    return z;
  };
}

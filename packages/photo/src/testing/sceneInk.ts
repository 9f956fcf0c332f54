import type { Draw } from './draw.ts';
import { type Film, paintStroke } from './film.ts';
import {
  filmOnGround,
  type Ground,
  ground,
  type PlacedSheet,
  paintSheet,
  paintTape,
  paintTracedLine,
  paintWord,
} from './paintFilm.ts';
import type { Difficulty, Level } from './sceneLevel.ts';
import type { Xy } from './sceneOutline.ts';
import { trueExtent } from './score.ts';

export interface Contents {
  readonly line: readonly Xy[];
  readonly sheets: readonly PlacedSheet[];
  readonly scale: Xy;
  readonly kind: Ground;
  readonly outside: boolean;
  readonly rim: boolean;
}

/** Ground, film, tape, the traced line, marks, words and sheets, in the order they were laid. */
export function paintScene(random: Draw, level: Level, difficulty: Difficulty, contents: Contents): Film {
  const { line, sheets, scale, kind, rim } = contents;
  const hard = difficulty === 'hard';
  const box = trueExtent(line);
  const size = {
    x: Math.max(box[2], -box[0]) + random.between(60, 110),
    y: Math.max(box[3], -box[1]) + random.between(50, 90),
  };
  const film = filmOnGround(
    ground(random, kind),
    { x: 1350, y: 1000 },
    size,
    random.between(0.45, 0.75),
    0.5,
  );
  const strips = random.whole(4, 10);
  for (let k = 0; k < strips; k++) {
    const onLong = random.chance(0.6);
    const at = onLong
      ? { x: random.between(-0.9, 0.9) * size.x, y: random.pick([-1, 1]) * size.y }
      : { x: random.pick([-1, 1]) * size.x, y: random.between(-0.8, 0.8) * size.y };
    paintTape(
      film,
      at,
      (onLong ? 0 : Math.PI / 2) + random.normal(0.05),
      { x: random.between(30, 45), y: 11 },
      random.between(170, 215),
    );
  }
  const width = random.between(2.2, 3);
  const pen = {
    width,
    wobble: random.between(...level.wobble),
    gaps: hard ? random.whole(0, 2) : difficulty === 'medium' ? random.whole(0, 1) : 0,
    gap: 12,
    ink: random.between(28, 55),
  };
  paintTracedLine(film, random, line, pen);
  if (rim) paintRim(film, line, random.pick([-1, 1]) * random.between(4.5, 8));
  if (difficulty !== 'easy') paintMarks(film, random, line, hard);
  const words = difficulty === 'easy' ? 1 : random.whole(1, 3);
  for (let k = 0; k < words; k++) {
    paintWord(
      film,
      random,
      { x: random.between(-0.4, 0.1) * size.x, y: random.between(-0.4, 0.4) * size.y },
      random.normal(0.1),
      random.between(22, 45),
      random.whole(3, 8),
    );
  }
  for (const sheet of sheets) paintSheet(film, sheet, scale);
  return film;
}

/** A fainter line beside the traced one. */
function paintRim(film: Film, line: readonly Xy[], offset: number): void {
  const n = line.length;
  const points = line.map(([x, y], i) => {
    const [p, q] = [line[(i + n - 2) % n]!, line[(i + 2) % n]!];
    const length = Math.hypot(q[0] - p[0], q[1] - p[1]) || 1;
    return {
      x: x + (offset * (q[1] - p[1])) / length,
      y: y - (offset * (q[0] - p[0])) / length,
      half: 0.7,
      density: i % 900 < 760 ? 0.45 : 0,
    };
  });
  paintStroke(film, points, 40);
}

/** Ticks across the line, and writing that touches it. */
function paintMarks(film: Film, random: Draw, line: readonly Xy[], hard: boolean): void {
  const n = line.length;
  const ticks = random.whole(0, hard ? 4 : 2);
  for (let k = 0; k < ticks; k++) {
    const i = random.whole(0, n - 1);
    const [[x, y], [a, b]] = [line[i]!, line[(i + 3) % n]!];
    const length = Math.hypot(a - x, b - y) || 1;
    const [nx, ny] = [-(b - y) / length, (a - x) / length];
    const [from, to] = [random.between(-25, -4), random.between(6, 30)];
    const end = (d: number) => ({ x: x + d * nx, y: y + d * ny, half: 1, density: 0.9 });
    paintStroke(film, [end(from), end(to)], 40);
  }
  if (random.chance(hard ? 0.5 : 0.2)) {
    const [x, y] = line[random.whole(0, n - 1)]!;
    const reach = Math.hypot(x, y);
    const at = { x: x * (1 - 40 / reach), y: y * (1 - 40 / reach) };
    paintWord(film, random, at, random.normal(0.2), random.between(20, 32), random.whole(2, 4));
  }
}

import {
  type Instance,
  lowerBound,
  type Piece,
  type Polygon,
  startPacking,
  step,
  verifyLay,
} from '@panewright/packing';
import { mm } from '@panewright/quantity';
import { bruteForce } from '../../packages/packing/src/testing/bruteForce.ts';
import { seeded } from '../../tests/trials/seeded.ts';

/** Not the engine's own generator. */
function dice(seed: number) {
  const next = seeded(seed);
  const whole = (low: number, high: number) => low + Math.floor(next() * (high - low + 1));
  const of = <T>(list: readonly T[]) => list[whole(0, list.length - 1)]!;
  return { next, whole, of };
}
type Dice = ReturnType<typeof dice>;

const polygon = (points: readonly (readonly [number, number])[]): Polygon =>
  points.map(([x, y]) => [mm(x), mm(y)] as const);

const rectangle = (l: number, w: number) =>
  polygon([
    [0, 0],
    [l, 0],
    [l, w],
    [0, w],
  ]);

/** Star-shaped about its middle, so simple; seldom convex. */
function star({ next, whole }: Dice): Polygon {
  const corners = whole(3, 10);
  return polygon(
    Array.from({ length: corners }, (_, k) => {
      const [a, r] = [(2 * Math.PI * (k + 0.8 * next())) / corners, 20 * (0.25 + 0.75 * next())];
      return [r * Math.cos(a), r * Math.sin(a)] as const;
    }),
  );
}

/** An angle, as of a frame's corner: whole coordinates, so that exact fits happen. */
function angle({ whole }: Dice): Polygon {
  const [l, w] = [whole(4, 30), whole(4, 30)];
  const [a, b] = [whole(1, l - 1), whole(1, w - 1)];
  return polygon([
    [0, 0],
    [l, 0],
    [l, b],
    [a, b],
    [a, w],
    [0, w],
  ]);
}

function pieceOf(rolled: Dice, id: number): Piece {
  const { whole, of, next } = rolled;
  const kind = whole(0, 3);
  const outline =
    kind === 0 ? star(rolled) : kind === 1 ? angle(rolled) : rectangle(whole(2, 40), whole(2, 40));
  const turns = of([[0], [0, 180], [0, 90, 180, 270], [0, 90], [0, 33.5], [12, 77, 201]]);
  return { id, demand: whole(1, 3), polygon: outline, allowedRotationsDeg: turns, flip: next() < 0.3 };
}

function instanceOf(rolled: Dice): Instance {
  const { whole, of } = rolled;
  return {
    stripWidth: mm(whole(58, 120)),
    spacing: mm(of([0, 0, 0, 1.5, 3])),
    margin: { side: mm(of([0, 0, 2])), end: mm(of([0, 0, 5])) },
    pieces: Array.from({ length: whole(1, 4) }, (_, id) => pieceOf(rolled, id)),
  };
}

export interface SmallTrials {
  readonly laid: number;
  readonly pieces: number;
  readonly searched: number;
  /** What must not be: the first few, in words. */
  readonly wrong: readonly string[];
}

/** Evaluations of the trials that search too: one in ten. */
const SEARCH = 4000;

/** Random small instances, laid; one in ten also searched. Every lay is checked by verifyLay and against the bound. */
export function smallTrials(count: number, seed: number): SmallTrials {
  const wrong: string[] = [];
  let [pieces, searched] = [0, 0];
  for (let k = 0; k < count; k++) {
    const rolled = dice(seed + k);
    const instance = instanceOf(rolled);
    const started = startPacking(instance, k, SEARCH);
    if (!started.ok) {
      wrong.push(`${seed + k}: ${started.refusal.code}`);
      continue;
    }
    const search = k % 10 === 0;
    const { best } = search ? step(started.value, SEARCH) : started.value;
    if (search) searched++;
    const checked = verifyLay(instance, best);
    const bound = lowerBound(instance);
    pieces += best.placements.length;
    if (!checked.ok) wrong.push(`${seed + k}: ${JSON.stringify(checked.refusal)}`);
    if (bound.ok && best.length < bound.value - 1e-6) wrong.push(`${seed + k}: shorter than its bound`);
  }
  return { laid: count, pieces, searched, wrong };
}

export interface ExactTrials {
  readonly tried: number;
  readonly optimal: number;
  /** Searches whose lay is longer than the optimum, by how much of it at most. */
  readonly worst: number;
}

/** Tiny sets of rectangles with whole sides, searched, against trying every place. */
export function exactTrials(count: number, seed: number): ExactTrials {
  let [optimal, worst] = [0, 0];
  for (let k = 0; k < count; k++) {
    const { whole } = dice(seed + k);
    const width = whole(5, 7);
    const rects = Array.from({ length: whole(2, 4) }, () => [whole(1, 5), whole(1, 5)] as const);
    const pieces = rects.map(([l, w], id) => ({
      id,
      demand: 1,
      polygon: rectangle(l, w),
      allowedRotationsDeg: [0, 90],
      flip: false,
    }));
    const margin = { side: mm(0), end: mm(0) };
    const started = startPacking({ stripWidth: mm(width), spacing: mm(0), margin, pieces }, k, 100_000);
    if (!started.ok) throw new Error(started.refusal.code);
    const { length } = step(started.value, 100_000).best;
    const least = bruteForce(width, rects);
    if (length < least - 1e-6) throw new Error(`${seed + k}: shorter than the optimum`);
    if (length <= least + 1e-6) optimal++;
    worst = Math.max(worst, length / least - 1);
  }
  return { tried: count, optimal, worst };
}

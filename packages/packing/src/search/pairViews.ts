import type { Prepared, Variant } from '../prepared.ts';
import { turn } from '../shape/turn.ts';
import { Halves } from './halves.ts';
import { PairTables } from './pairTables.ts';

/** Turned shapes up to which tables cost little beside the search. */
export const FEW = 150;

/** How finely overlap is told, by the number of turned shapes: the more pairs there are, the less each can cost. */
const FINENESS = [
  { variants: 60, cells: 40, circles: 16, cover: 0.9 },
  { variants: FEW, cells: 24, circles: 16, cover: 0.9 },
] as const;
/**
 * Of many shapes some are long and thin, and want many circles; the others are told well enough by few. Coarser cells
 * are quicker at first, but a minute's lay of 340 turned shapes is 2 points poorer by them.
 */
const OF_MANY = { cells: 32, least: 16, circles: 24, cover: 0.8 } as const;
/** Cells of all tables together, at most, if all pairs meet: some 200 MB. */
const MOST_CELLS = 25e6;

function finenessFor(prep: Prepared) {
  const found = FINENESS.find(({ variants }) => prep.variants.length <= variants);
  if (found) return found;
  const cells = Math.floor(Math.sqrt(MOST_CELLS / tablesOfAll(prep))) - 1;
  return { ...OF_MANY, cells: Math.max(OF_MANY.least, Math.min(OF_MANY.cells, cells)) };
}

/** Tables there will be once every two turned shapes have met: quarter turns share theirs, others do not. */
export function tablesOfAll({ variants, shapes }: Prepared): number {
  const quarters = variants.every(({ rotationDeg }) => rotationDeg % 90 === 0);
  return ((quarters ? shapes.length : variants.length) * variants.length) / 2;
}

/** Numbers per view: where the table begins, then the rows of (dx, dy, 1) -> its (u, v). */
export const VIEW = 7;

/**
 * The overlap of any two variants, read from as few tables as there are unlike pairs: swapping two pieces reverses
 * their relative place, turning both by quarter turns turns it, so such pairs share one table.
 */
export class PairViews {
  readonly price = 1;
  private readonly count: number;
  readonly view: Float64Array;
  readonly tables: PairTables;
  private readonly known = new Map<number, ReturnType<PairTables['add']>>();
  private readonly halves: Halves;

  constructor(private readonly prep: Prepared) {
    this.count = prep.variants.length;
    const { cells, circles, cover } = finenessFor(prep);
    this.halves = new Halves(prep, circles, cover);
    this.view = new Float64Array(VIEW * this.count ** 2).fill(-1);
    this.tables = new PairTables(cells, prep.touch);
  }

  /** Badness of the overlap of variant b, its corner at (dx, dy) from that of variant a; 0 apart or touching. */
  severity(a: number, b: number, dx: number, dy: number): number {
    const view = this.view;
    const at = VIEW * (a * this.count + b);
    if (view[at]! < 0) this.look(a, b, at);
    return this.tables.severity(
      view[at]!,
      view[at + 1]! * dx + view[at + 2]! * dy + view[at + 3]!,
      view[at + 4]! * dx + view[at + 5]! * dy + view[at + 6]!,
    );
  }

  /** Where in `view` the pair's numbers are. */
  viewOf(a: number, b: number): number {
    const at = VIEW * (a * this.count + b);
    if (this.view[at]! < 0) this.look(a, b, at);
    return at;
  }

  private look(a: number, b: number, at: number): void {
    const { variants } = this.prep;
    const swap = variants[a]!.shape > variants[b]!.shape;
    const [fixed, moving] = swap ? [variants[b]!, variants[a]!] : [variants[a]!, variants[b]!];
    const { first, second, back } = this.turnedBack(fixed, moving);
    const [c, s] = turn(-back);
    const sign = swap ? -1 : 1;
    // Middles turn with the pieces, corners do not: half the difference of the boxes goes out and in again.
    const [hx, hy] = [(moving.width - fixed.width) / 2, (moving.height - fixed.height) / 2];
    const { base, minX, minY, cellW, cellH } = this.tableOf(first.index, second.index);
    const outX = c * hx - s * hy - (second.width - first.width) / 2 - minX;
    const outY = s * hx + c * hy - (second.height - first.height) / 2 - minY;
    this.view.set([base, (sign * c) / cellW, (sign * -s) / cellW, outX / cellW], at);
    this.view.set([(sign * s) / cellH, (sign * c) / cellH, outY / cellH], at + 4);
  }

  /** The pair turned by quarter turns until the first lies as its shape's first variant, if the second can follow. */
  private turnedBack(fixed: Variant, moving: Variant) {
    const { shapes } = this.prep;
    const own = { first: fixed, second: moving, back: 0 };
    const first = shapes[fixed.shape]!.variants.find((v) => v.flipped === fixed.flipped)!;
    const back = fixed.rotationDeg - first.rotationDeg;
    if (back % 90 !== 0) return own;
    const second = shapes[moving.shape]!.variants.find(
      (v) => v.flipped === moving.flipped && (moving.rotationDeg - back - v.rotationDeg) % 360 === 0,
    );
    return second ? { first, second, back } : own;
  }

  private tableOf(a: number, b: number) {
    const key = a * this.count + b;
    const found = this.known.get(key);
    if (found) return found;
    const made = this.tables.add(this.prep.region(a, b), this.halves.of(a), this.halves.of(b));
    this.known.set(key, made);
    return made;
  }
}

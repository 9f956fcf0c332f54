import type { BlockedRegion } from '../shape/blockedRegion.ts';
import { type Half, severityOf } from './halves.ts';

const UNKNOWN = 0;
const APART = 1;
const INSIDE = 2;
/** From here on a cell's mark is where its deciders begin: a cell on the edge of the blocked region. */
const FIRST_DECIDER = 3;

/** One table's place and frame; what is asked only when a cell is worked out. */
interface Table {
  readonly region: BlockedRegion;
  readonly a: Half;
  readonly b: Half;
  readonly base: number;
  readonly minX: number;
  readonly minY: number;
  readonly cellW: number;
  readonly cellH: number;
}

/**
 * The overlaps of pairs of turned shapes as functions of their relative place, tabulated, all in three long arrays.
 * Cells are worked out on first use: a cell apart from the blocked region, one inside it, or one on its edge, which
 * keeps just those half-planes that can decide there. Whether two pieces overlap is always exact; how badly is read
 * between the nodes. Places are in cells of the table: u along, v across, from its lower left corner.
 */
export class PairTables {
  /** Cells of a row and one more, since nodes and cells share an index. */
  private readonly stride: number;
  private readonly tables: Table[] = [];
  private mark = new Int32Array(1 << 14);
  private node = new Float32Array(1 << 14);
  /** Per edge cell: number of parts, then per part its number of half-planes and nx, ny, c of each, in cells. */
  private decider = new Float64Array(1 << 12);
  private deciders = FIRST_DECIDER;
  private end = 0;
  /** The deciders of the cell being told. */
  private found = new Float64Array(1 << 10);

  constructor(
    readonly cells: number,
    private readonly touch: number,
  ) {
    this.stride = cells + 1;
  }

  /** @returns where the table begins, and its frame */
  add(region: BlockedRegion, a: Half, b: Half): Table {
    const base = this.end;
    this.end += this.stride ** 2;
    this.mark = withRoom(this.mark, this.end);
    this.node = withRoom(this.node, this.end);
    this.node.fill(-1, base, this.end);
    const [cellW, cellH] = [(a.width + b.width) / this.cells, (a.height + b.height) / this.cells];
    const table = { region, a, b, base, minX: -b.width, minY: -b.height, cellW, cellH };
    this.tables.push(table);
    return table;
  }

  /** Badness of the overlap at (u, v) of the table at `base`: 0 apart or touching, else above 0; a length squared. */
  severity(base: number, u: number, v: number): number {
    const cells = this.cells;
    let i = u | 0;
    let j = v | 0;
    if (i >= cells) i = cells - 1;
    if (j >= cells) j = cells - 1;
    const k = base + j * (cells + 1) + i;
    let mark = this.mark[k]!;
    if (mark === UNKNOWN) mark = this.workOut(base, i, j);
    if (mark === APART || (mark >= FIRST_DECIDER && !this.inside(mark, u, v))) return 0;
    const node = this.node;
    const fx = u - i;
    const low = node[k]! + fx * (node[k + 1]! - node[k]!);
    const l = k + cells + 1;
    const high = node[l]! + fx * (node[l + 1]! - node[l]!);
    return low + (v - j) * (high - low);
  }

  private inside(at: number, u: number, v: number): boolean {
    const list = this.decider;
    let k = at + 1;
    for (let p = list[at]!; p > 0; p--) {
      const end = k + 1 + 3 * list[k]!;
      let h = k + 1;
      while (h < end && list[h + 2]! > list[h]! * u + list[h + 1]! * v) h += 3;
      if (h >= end) return true;
      k = end;
    }
    return false;
  }

  private workOut(base: number, i: number, j: number): number {
    const { stride, node } = this;
    const table = this.tables[base / stride ** 2]!;
    const mark = this.classify(table, i, j);
    const k = base + j * stride + i;
    this.mark[k] = mark;
    if (mark === APART) return mark;
    for (const l of [0, 1, stride, stride + 1]) {
      if (node[k + l]! >= 0) continue;
      const [p, q] = [i + (l % stride), j + (l >= stride ? 1 : 0)];
      const { a, b, minX, minY, cellW, cellH } = table;
      node[k + l] = severityOf(a, b, minX + p * cellW, minY + q * cellH);
    }
    return mark;
  }

  private classify({ region, minX, minY, cellW, cellH }: Table, i: number, j: number): number {
    const { touch } = this;
    const { box, start, parts } = region;
    const [hx, hy] = [cellW / 2, cellH / 2];
    const [cx, cy] = [minX + i * cellW + hx, minY + j * cellH + hy];
    const [lowX, highX, lowY, highY] = [cx - hx, cx + hx, cy - hy, cy + hy];
    let undecided = 0;
    let end = 1;
    for (let p = 0; p < parts; p++) {
      const b = 4 * p;
      if (highX <= box[b]! || lowX >= box[b + 2]! || highY <= box[b + 1]! || lowY >= box[b + 3]!) continue;
      const [from, to] = [start[p]!, start[p + 1]!];
      const found = withRoom(this.found, end + 1 + 3 * (to - from));
      this.found = found;
      const mark = end++;
      let apart = false;
      for (let h = from; h < to; h++) {
        const nx = region.nx[h]!;
        const ny = region.ny[h]!;
        const c = region.c[h]!;
        const slack = c - nx * cx - ny * cy;
        const reach = (Math.abs(nx) * hx + Math.abs(ny) * hy) * (1 + 1e-9);
        if (slack + reach <= touch) {
          apart = true;
          break;
        }
        if (slack - reach > touch) continue;
        found[end++] = nx * cellW;
        found[end++] = ny * cellH;
        found[end++] = c - nx * minX - ny * minY - touch;
      }
      if (apart) {
        end = mark;
        continue;
      }
      if (end === mark + 1) return INSIDE;
      found[mark] = (end - mark - 1) / 3;
      undecided++;
    }
    this.found[0] = undecided;
    return undecided === 0 ? APART : this.keep(this.found.subarray(0, end));
  }

  private keep(found: Float64Array): number {
    const at = this.deciders;
    this.deciders += found.length;
    this.decider = withRoom(this.decider, this.deciders);
    this.decider.set(found, at);
    return at;
  }
}

/** The same numbers in an array of at least this length, and then of twice it, so that growing seldom costs. */
function withRoom<T extends Int32Array | Float32Array | Float64Array>(array: T, length: number): T {
  if (length <= array.length) return array;
  const longer = new (array.constructor as new (length: number) => T)(2 * length);
  longer.set(array);
  return longer;
}

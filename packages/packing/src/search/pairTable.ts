import type { BlockedRegion } from '../shape/blockedRegion.ts';
import type { Poles } from './poles.ts';

const UNKNOWN = 0;
const APART = 1;
const INSIDE = 2;
const EDGE = 3;

/** What a table needs to know of one turned shape, in its frame. */
export interface Half {
  readonly width: number;
  readonly height: number;
  readonly poles: Poles;
  readonly diameter: number;
  readonly hullArea: number;
}

/**
 * The overlap of two turned shapes as a function of their relative place, tabulated. Cells are worked out on first
 * use: a cell apart from the blocked region, one inside it, or one on its edge, which keeps just those half-planes
 * that can decide there. Whether two pieces overlap is always exact; how badly is read between the nodes.
 */
export class PairTable {
  private readonly kind: Uint8Array;
  private readonly at: Int32Array;
  private readonly node: Float32Array;
  /** Per edge cell: number of parts, then per part its number of half-planes and nx, ny, c of each. */
  private readonly deciders: number[] = [0.5];
  private readonly minX: number;
  private readonly minY: number;
  private readonly cellW: number;
  private readonly cellH: number;
  private readonly perX: number;
  private readonly perY: number;

  constructor(
    private readonly region: BlockedRegion,
    private readonly a: Half,
    private readonly b: Half,
    private readonly cells: number,
    private readonly touch: number,
  ) {
    this.kind = new Uint8Array(cells * cells);
    this.at = new Int32Array(cells * cells);
    this.node = new Float32Array((cells + 1) ** 2).fill(-1);
    this.minX = -b.width;
    this.minY = -b.height;
    this.cellW = (a.width + b.width) / cells;
    this.cellH = (a.height + b.height) / cells;
    this.perX = 1 / this.cellW;
    this.perY = 1 / this.cellH;
  }

  /** Badness of the overlap with b's corner at (dx, dy) from a's: 0 apart or touching, else above 0; a length squared. */
  severity(dx: number, dy: number): number {
    const cells = this.cells;
    const u = (dx - this.minX) * this.perX;
    const v = (dy - this.minY) * this.perY;
    let i = u | 0;
    let j = v | 0;
    if (i >= cells) i = cells - 1;
    if (j >= cells) j = cells - 1;
    const cell = j * cells + i;
    let kind = this.kind[cell]!;
    if (kind === UNKNOWN) kind = this.workOut(i, j, cell);
    if (kind === APART) return 0;
    if (kind === EDGE && !this.inside(this.at[cell]!, dx, dy)) return 0;
    const node = this.node;
    const k = cell + j;
    const fx = u - i;
    const fy = v - j;
    const low = node[k]! + fx * (node[k + 1]! - node[k]!);
    const high = node[k + cells + 1]! + fx * (node[k + cells + 2]! - node[k + cells + 1]!);
    return low + fy * (high - low);
  }

  private inside(at: number, dx: number, dy: number): boolean {
    const list = this.deciders;
    const touch = this.touch;
    let k = at + 1;
    for (let p = list[at]!; p > 0; p--) {
      const end = k + 1 + 3 * list[k]!;
      let h = k + 1;
      while (h < end && list[h + 2]! - list[h]! * dx - list[h + 1]! * dy > touch) h += 3;
      if (h >= end) return true;
      k = end;
    }
    return false;
  }

  private workOut(i: number, j: number, cell: number): number {
    const kind = this.classify(i, j, cell);
    this.kind[cell] = kind;
    if (kind !== APART) {
      for (const [p, q] of [
        [i, j],
        [i + 1, j],
        [i, j + 1],
        [i + 1, j + 1],
      ] as const) {
        const k = q * (this.cells + 1) + p;
        if (this.node[k]! < 0) {
          this.node[k] = severityOf(this.a, this.b, this.minX + p * this.cellW, this.minY + q * this.cellH);
        }
      }
    }
    return kind;
  }

  private classify(i: number, j: number, cell: number): number {
    const { region, touch, deciders } = this;
    const [hx, hy] = [this.cellW / 2, this.cellH / 2];
    const [cx, cy] = [this.minX + i * this.cellW + hx, this.minY + j * this.cellH + hy];
    const head = deciders.length;
    deciders.push(0);
    for (let p = 0; p < region.parts; p++) {
      const b = 4 * p;
      if (cx + hx <= region.box[b]! || cx - hx >= region.box[b + 2]!) continue;
      if (cy + hy <= region.box[b + 1]! || cy - hy >= region.box[b + 3]!) continue;
      const mark = deciders.length;
      deciders.push(0);
      let apart = false;
      for (let h = region.start[p]!; h < region.start[p + 1]!; h++) {
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
        deciders.push(nx, ny, c);
        deciders[mark]!++;
      }
      if (apart) deciders.length = mark;
      else if (deciders[mark] === 0) {
        deciders.length = head;
        return INSIDE;
      } else deciders[head]!++;
    }
    if (deciders[head] === 0) {
      deciders.length = head;
      return APART;
    }
    this.at[cell] = head;
    return EDGE;
  }
}

/**
 * How badly two shapes overlap at a relative place: penetration of every pair of inscribed circles, never flat and
 * never 0, weighted by the lesser radius and by the shapes' size.
 *
 * @source sources.md#gardeyn-2025, its collision proxy
 */
function severityOf(a: Half, b: Half, dx: number, dy: number): number {
  const eps = 0.01 * Math.max(a.diameter, b.diameter);
  let sum = 0;
  for (let p = 0; p < a.poles.length; p += 3) {
    const ax = a.poles[p]! - dx;
    const ay = a.poles[p + 1]! - dy;
    const ar = a.poles[p + 2]!;
    for (let q = 0; q < b.poles.length; q += 3) {
      const ex = b.poles[q]! - ax;
      const ey = b.poles[q + 1]! - ay;
      const br = b.poles[q + 2]!;
      const depth = ar + br - Math.sqrt(ex * ex + ey * ey);
      sum += (depth >= eps ? depth : (eps * eps) / (2 * eps - depth)) * Math.min(ar, br);
    }
  }
  return Math.sqrt(Math.PI * sum + eps * eps) * Math.sqrt(Math.sqrt(a.hullArea) * Math.sqrt(b.hullArea));
}

import type { Prepared } from '../prepared.ts';
import { most, outwardNormals } from '../shape/blockedRegion.ts';
import { boxOf, type Ring } from '../shape/ring.ts';
import { type Half, Halves, severityOf } from './halves.ts';

/** Inscribed circles of a shape, at most, and the share of its area that is enough. */
const [CIRCLES, COVER] = [8, 0.9];

/** A convex part of a turned shape. */
interface Part {
  readonly ring: Ring;
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
  readonly midX: number;
  readonly midY: number;
  /** Flat nx, ny, c: the part lies where nx x + ny y <= c. */
  readonly planes: Float64Array;
}

/**
 * The overlap of any two variants, worked out anew at every question. For instances of so many turned shapes that most
 * pairs meet once or never, where a table for each would take more time and memory than it saves. Holds memory in
 * proportion to the shapes, not to their pairs.
 */
export class DirectPairs {
  /** Evaluations from tables in the time of one of these. */
  readonly price = 5;
  private readonly parts: (readonly Part[] | undefined)[];
  private readonly halves: Halves;

  constructor(private readonly prep: Prepared) {
    this.parts = new Array<readonly Part[] | undefined>(prep.variants.length).fill(undefined);
    this.halves = new Halves(prep, CIRCLES, COVER);
  }

  /** Badness of the overlap of variant b, its corner at (dx, dy) from that of variant a; 0 apart or touching. */
  severity(a: number, b: number, dx: number, dy: number): number {
    const [first, second] = [this.halves.of(a), this.halves.of(b)];
    if (!this.circlesMeet(first, second, dx, dy) && !this.partsMeet(a, b, dx, dy)) return 0;
    return severityOf(first, second, dx, dy);
  }

  /** Whether the largest circles overlap: then so do the shapes, and nothing else need be asked. */
  private circlesMeet(a: Half, b: Half, dx: number, dy: number): boolean {
    const [p, q] = [a.poles, b.poles];
    const [ex, ey] = [q[0]! + dx - p[0]!, q[1]! + dy - p[1]!];
    const reach = p[2]! + q[2]! - this.prep.touch;
    return reach > 0 && ex * ex + ey * ey < reach * reach;
  }

  private partsMeet(a: number, b: number, dx: number, dy: number): boolean {
    const { touch, instance } = this.prep;
    const keep = instance.spacing - touch;
    for (const p of this.partsOf(a))
      for (const q of this.partsOf(b)) {
        if (q.minX + dx >= p.maxX + keep || p.minX - dx >= q.maxX + keep) continue;
        if (q.minY + dy >= p.maxY + keep || p.minY - dy >= q.maxY + keep) continue;
        if (!isApart(p, q, dx, dy, keep) && !isApart(q, p, -dx, -dy, keep)) return true;
      }
    return false;
  }

  private partsOf(v: number): readonly Part[] {
    const { variants, instance } = this.prep;
    return (this.parts[v] ??= variants[v]!.parts.map((ring) => partOf(ring, instance.spacing > 0)));
  }
}

function partOf(ring: Ring, rounded: boolean): Part {
  const normals = outwardNormals(ring, rounded);
  const planes = new Float64Array(normals.length);
  for (let k = 0; k < normals.length; k += 3) {
    const [nx, ny] = [normals[k]!, normals[k + 1]!];
    planes.set([nx, ny, most(ring, nx, ny)], k);
  }
  const box = boxOf(ring);
  return { ring, ...box, midX: (box.minX + box.maxX) / 2, midY: (box.minY + box.maxY) / 2, planes };
}

/** Whether a half-plane of p has all of q, moved by (dx, dy), `keep` beyond it. */
function isApart(p: Part, q: Part, dx: number, dy: number, keep: number): boolean {
  const { planes } = p;
  const { ring } = q;
  for (let k = 0; k < planes.length; k += 3) {
    const nx = planes[k]!;
    const ny = planes[k + 1]!;
    const beyond = planes[k + 2]! + keep - nx * dx - ny * dy;
    // The middle of a convex ring's box lies in the ring.
    if (nx * q.midX + ny * q.midY < beyond) continue;
    let l = 0;
    while (l < ring.length && nx * ring[l]! + ny * ring[l + 1]! >= beyond) l += 2;
    if (l >= ring.length) return true;
  }
  return false;
}

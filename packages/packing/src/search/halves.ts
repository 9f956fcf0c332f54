import type { Prepared, Variant } from '../prepared.ts';
import { turn } from '../shape/turn.ts';
import { type Poles, polesOf } from './poles.ts';

/** What the badness of an overlap needs to know of one turned shape, in its frame. */
export interface Half {
  readonly width: number;
  readonly height: number;
  readonly poles: Poles;
  readonly diameter: number;
  readonly hullArea: number;
}

/** The halves of an instance's turned shapes, each made on first use. */
export class Halves {
  /** By shape, circles of its first variant. */
  private readonly poles = new Map<number, Poles>();
  private readonly known: (Half | undefined)[];

  /** @param circles inscribed circles of a shape, at most; they also end when they cover `cover` of its area */
  constructor(
    private readonly prep: Prepared,
    private readonly circles: number,
    private readonly cover: number,
  ) {
    this.known = new Array<Half | undefined>(prep.variants.length).fill(undefined);
  }

  of(v: number): Half {
    return (this.known[v] ??= this.make(v));
  }

  private make(v: number): Half {
    const { variants, shapes } = this.prep;
    const { width, height, shape } = variants[v]!;
    const { diameter, hullArea } = shapes[shape]!;
    return { width, height, poles: this.polesFor(variants[v]!), diameter, hullArea };
  }

  /** The circles of a shape's first variant, turned with it; a mirror image has its own. */
  private polesFor(variant: Variant): Poles {
    const { shapes, instance } = this.prep;
    const first = shapes[variant.shape]!.variants.find((v) => v.flipped === variant.flipped)!;
    let poles = this.poles.get(first.index);
    if (!poles) {
      poles = polesOf(first.ring, this.circles, this.cover);
      this.poles.set(first.index, poles);
    }
    const [c, s] = turn(variant.rotationDeg - first.rotationDeg);
    const out = poles.slice();
    for (let k = 0; k < poles.length; k += 3) {
      const [x, y] = [poles[k]! - first.originX, poles[k + 1]! - first.originY];
      out[k] = c * x - s * y + variant.originX;
      out[k + 1] = s * x + c * y + variant.originY;
      out[k + 2] = poles[k + 2]! + instance.spacing / 2;
    }
    return out;
  }
}

/**
 * How badly two shapes overlap at a relative place: penetration of every pair of inscribed circles, never flat and
 * never 0, weighted by the lesser radius and by the shapes' size.
 *
 * @source sources.md#gardeyn-2025, its collision proxy
 */
export function severityOf(a: Half, b: Half, dx: number, dy: number): number {
  const eps = 0.01 * Math.max(a.diameter, b.diameter);
  const [first, second] = [a.poles, b.poles];
  const [square, twice] = [eps * eps, 2 * eps];
  let sum = 0;
  for (let p = 0; p < first.length; p += 3) {
    const ax = first[p]! - dx;
    const ay = first[p + 1]! - dy;
    const ar = first[p + 2]!;
    for (let q = 0; q < second.length; q += 3) {
      const ex = second[q]! - ax;
      const ey = second[q + 1]! - ay;
      const br = second[q + 2]!;
      const depth = ar + br - Math.sqrt(ex * ex + ey * ey);
      sum += (depth >= eps ? depth : square / (twice - depth)) * Math.min(ar, br);
    }
  }
  return Math.sqrt(Math.PI * sum + eps * eps) * Math.sqrt(Math.sqrt(a.hullArea) * Math.sqrt(b.hullArea));
}

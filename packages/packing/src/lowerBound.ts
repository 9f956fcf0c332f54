import { type Millimetre, mm, ok, type Result } from '@panewright/quantity';
import { checkInstance } from './checkInstance.ts';
import type { Instance, InstanceRefusal } from './instance.ts';
import { type Prepared, prepared, type Shape, type Variant } from './prepared.ts';
import type { Ring } from './shape/ring.ts';

/** Slices per stretch between two vertices; more only tightens the bound. */
const SLICES = 8;

/**
 * A length no lay can be shorter than: the greatest of
 * - the longest piece, each turned its shortest way;
 * - for several dual feasible functions f, the sum over pieces of the integral along the cloth of
 *   f(chord / width): where pieces share an x, their chords across the cloth fit its width. f(u) = u is the area
 *   bound; the others also count the cloth beside a piece that nothing else can use;
 * - the summed lengths of convex pieces too tall to pass one another.
 *
 * @returns mm of cloth, margins included
 * @accuracy a true bound up to rounding (1e-9 relative)
 * @refuses every InstanceRefusal
 * @source dual feasible functions: sources.md#fekete-schepers-2004; the chord form is our own step from it
 */
export function lowerBound(instance: Instance): Result<Millimetre, InstanceRefusal> {
  const checked = checkInstance(instance);
  return checked.ok ? ok(boundOf(prepared(instance))) : checked;
}

/**
 * The same for an instance already checked.
 *
 * @source as lowerBound: sources.md#fekete-schepers-2004
 */
export function boundOf(prep: Prepared): Millimetre {
  const { margin, spacing } = prep.instance;
  const inner = Math.max(longestPiece(prep), chordBound(prep), passingBound(prep) - spacing);
  return mm(inner * (1 - 1e-12) + 2 * margin.end);
}

const demandOf = (prep: Prepared, shape: Shape) =>
  prep.items.filter((item) => item.shape === shape.index).length;

/** Without those of reserved places, which take no length, and of pieces that are not wanted. */
const ofPieces = (prep: Prepared) => prep.shapes.filter((shape) => demandOf(prep, shape) > 0);

function longestPiece(prep: Prepared): number {
  const { spacing } = prep.instance;
  return Math.max(...ofPieces(prep).map((s) => Math.min(...s.variants.map((v) => v.width - spacing))));
}

type Dual = (share: number) => number;

/** u -> floor((k + 1) u) / k, or u where (k + 1) u is whole. Never decreases, and sums to at most 1 where shares do. */
function stairs(k: number): Dual {
  return (u) => {
    const steps = (k + 1) * u;
    return Math.abs(steps - Math.round(steps)) < 1e-9 ? u : Math.floor(steps) / k;
  };
}

/** 1 above 1 - e, u between, 0 below e. */
function ends(e: number): Dual {
  return (u) => (u > 1 - e + 1e-9 ? 1 : u < e + 1e-9 ? 0 : u);
}

const DUALS: readonly Dual[] = [
  (u) => u,
  ...[1, 2, 3, 4, 5, 6, 7, 8].map(stairs),
  ...[0.05, 0.1, 0.15, 0.2, 0.25, 0.3, 0.35, 0.4, 0.45].map(ends),
];

function chordBound(prep: Prepared): number {
  const totals = DUALS.map(() => 0);
  for (const shape of ofPieces(prep)) {
    const demand = demandOf(prep, shape);
    const byVariant = shape.variants.map((variant) => chordIntegrals(prep, variant));
    for (let f = 0; f < DUALS.length; f++) totals[f]! += demand * Math.min(...byVariant.map((of) => of[f]!));
  }
  const { stripWidth, margin } = prep.instance;
  // The slices round the plain area down; state it exactly.
  return Math.max(...totals, prep.area / (stripWidth - 2 * margin.side));
}

/** Integral of f(chord / height) over the variant's length, for each f, from below. */
function chordIntegrals(prep: Prepared, { ring }: Variant): readonly number[] {
  const { spacing } = prep.instance;
  const sums = DUALS.map(() => 0);
  const xs = [...new Set(ring.filter((_, k) => k % 2 === 0))].sort((a, b) => a - b);
  for (let s = 0; s + 1 < xs.length; s++) {
    const width = (xs[s + 1]! - xs[s]!) / SLICES;
    if (width < prep.touch) continue;
    const edges = edgesAcross(ring, (xs[s]! + xs[s + 1]!) / 2);
    let before = chordsAt(ring, edges, xs[s]!);
    for (let k = 1; k <= SLICES; k++) {
      const after = chordsAt(ring, edges, xs[s]! + k * width);
      for (let c = 0; c < after.length; c++) {
        // Rounded edges may leave a chord a hair long; a share is never above 1.
        const share = Math.min(1, Math.max(0, Math.min(before[c]!, after[c]!) + spacing) / prep.height);
        for (let f = 0; f < DUALS.length; f++) sums[f]! += DUALS[f]!(share) * width;
      }
      before = after;
    }
  }
  return sums;
}

/** First vertices of the edges that cross the line x, from low to high. */
function edgesAcross(ring: Ring, x: number): readonly number[] {
  const out: number[] = [];
  for (let k = 0; k < ring.length; k += 2) {
    const l = (k + 2) % ring.length;
    if (ring[k]! < x !== ring[l]! < x) out.push(k);
  }
  return out.sort((a, b) => heightOn(ring, a, x) - heightOn(ring, b, x));
}

function heightOn(ring: Ring, k: number, x: number): number {
  const l = (k + 2) % ring.length;
  const t = (x - ring[k]!) / (ring[l]! - ring[k]!);
  return ring[k + 1]! + t * (ring[l + 1]! - ring[k + 1]!);
}

function chordsAt(ring: Ring, edges: readonly number[], x: number): readonly number[] {
  const heights = edges.map((k) => heightOn(ring, k, x));
  return heights.filter((_, k) => k % 2 === 1).map((high, k) => high - heights[2 * k]!);
}

/** A convex variant as a rectangle inside it: `length` along the cloth, from `below` its box's foot, `tall`. */
interface Inside {
  readonly length: number;
  readonly tall: number;
  readonly below: number;
  readonly above: number;
}

/**
 * Rectangles inside two pieces that cannot lie side by side across the cloth must follow each other along it.
 * A rectangle cannot reach the cloth's edge when its piece is taller, which leaves less room than its height says.
 */
function passingBound(prep: Prepared): number {
  return Math.max(...[0, 0.01, 0.02, 0.05, 0.1].map((trim) => passingAt(prep, trim)));
}

function passingAt(prep: Prepared, trim: number): number {
  const candidates = ofPieces(prep)
    .map((shape) => ({ demand: demandOf(prep, shape), inside: worstInside(shape, trim) }))
    .filter((c) => c.inside !== undefined && c.inside.tall > 0)
    .sort((a, b) => b.inside!.tall - a.inside!.tall);
  let most = 0;
  let sum = 0;
  let [below, above, lastTall] = [Infinity, Infinity, Infinity];
  for (const { demand, inside } of candidates) {
    const { length, tall } = inside!;
    below = Math.min(below, inside!.below);
    above = Math.min(above, inside!.above);
    const tightest = demand > 1 ? 2 * tall : tall + lastTall;
    // Frames are grown by half the spacing on each side, and so is the strip.
    if (tightest + prep.instance.spacing <= prep.height - below - above + prep.touch) break;
    sum += demand * length;
    lastTall = tall;
    most = Math.max(most, sum);
  }
  return most;
}

/** Over a shape's turns the least of everything, so that it holds whichever turn is taken. */
function worstInside(shape: Shape, trim: number): Inside | undefined {
  const all = shape.variants.map((variant) => insideOf(variant, trim));
  if (all.some((inside) => inside === undefined)) return undefined;
  const least = (of: (inside: Inside) => number) => Math.min(...all.map((inside) => of(inside!)));
  return {
    length: least((i) => i.length),
    tall: least((i) => i.tall),
    below: least((i) => i.below),
    above: least((i) => i.above),
  };
}

function insideOf({ ring, parts, height }: Variant, trim: number): Inside | undefined {
  if (parts.length !== 1) return undefined;
  const xs = [...ring.filter((_, k) => k % 2 === 0)];
  const [left, right] = [Math.min(...xs), Math.max(...xs)];
  const cut = trim * (right - left);
  const sides = [sideAt(ring, left + cut, (left + right) / 2), sideAt(ring, right - cut, (left + right) / 2)];
  const foot = Math.max(...sides.map((s) => s.low));
  const head = Math.min(...sides.map((s) => s.high));
  return { length: right - left - 2 * cut, tall: head - foot, below: foot, above: height - head };
}

/** Extent of a convex ring on the line x; on a vertical edge, that edge. */
function sideAt(ring: Ring, x: number, towards: number) {
  const inner = x + (towards - x) * 1e-12;
  const heights = edgesAcross(ring, inner).map((k) => heightOn(ring, k, inner));
  return { low: Math.min(...heights), high: Math.max(...heights) };
}

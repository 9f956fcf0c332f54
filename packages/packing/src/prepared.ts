import { mm } from '@panewright/quantity';
import type { Instance, Layout, Piece, Placement } from './instance.ts';
import { type BlockedRegion, blockedRegion } from './shape/blockedRegion.ts';
import { convexParts } from './shape/convexParts.ts';
import { coverParts } from './shape/coverParts.ts';
import { outward } from './shape/outward.ts';
import {
  areaOf,
  boxOf,
  diameterOf,
  hullOf,
  movedRing,
  type Ring,
  ringOf,
  withoutIdleVertices,
} from './shape/ring.ts';

/** Depths below this share of the strip's width count as touching, while searching. */
export const TOUCH = 2e-8;

/** Vertices nearer than this share of the strip's width to the line through their neighbours are left out. */
export const IDLE = 1e-10;

/**
 * Share of its area by which a shape of many corners may be rounded outward, so that it has fewer; and where there are
 * very many turned shapes, when the tables of their pairs cost more than the search itself.
 */
const OUTWARD = 0.001;
const OUTWARD_OF_MANY = 0.004;

/** Convex parts a shape is laid by while constructing, at most; only its hull where there are very many shapes. */
const COVER = 4;
const MANY_VARIANTS = 200;

/** Variants up to which every pair's region is kept; beyond, so many at a time. */
const DENSE = 1000;
const MOST_KEPT = 20_000;

/**
 * A shape turned one way. Its frame has its origin at the lower left corner of its box, the box grown on
 * every side by half the spacing; `width` and `height` are those of the grown box.
 */
export interface Variant {
  readonly index: number;
  readonly shape: number;
  readonly rotationDeg: number;
  readonly flipped: boolean;
  readonly width: number;
  readonly height: number;
  readonly ring: Ring;
  /** Convex parts that together cover the shape: exactly, or rounded outward where it has many corners. */
  readonly parts: readonly Ring[];
  /** At most COVER convex parts that cover the shape; `parts` itself when they are few. */
  readonly cover: readonly Ring[];
  /** From the frame's origin to where the vertex the base shape calls (0, 0) lies. */
  readonly originX: number;
  readonly originY: number;
}

/** All pieces of one outline with the same turns are one shape. */
export interface Shape {
  readonly index: number;
  readonly area: number;
  readonly hullArea: number;
  readonly diameter: number;
  readonly variants: readonly Variant[];
}

/** One copy of one piece. `baseX`, `baseY`: the corner of the piece's own box in its own coordinates. */
export interface Item {
  readonly piece: Piece;
  readonly copy: number;
  readonly shape: number;
  readonly baseX: number;
  readonly baseY: number;
}

/** A reserved place that reaches the cloth, as a shape that lies still: the lower left corner of its grown box. */
export interface Still {
  /** Index among the instance's reserved places. */
  readonly place: number;
  readonly shape: number;
  readonly variant: number;
  readonly x: number;
  readonly y: number;
}

/**
 * An instance in the engine's terms: the strip is 0 .. height across, grown by half the spacing on each side
 * like every shape, so that neighbours may touch; margins lie outside it.
 */
export interface Prepared {
  readonly instance: Instance;
  readonly height: number;
  readonly touch: number;
  readonly area: number;
  /** Those of the pieces first, then those of the reserved places. */
  readonly shapes: readonly Shape[];
  readonly variants: readonly Variant[];
  readonly items: readonly Item[];
  readonly still: readonly Still[];
  /** Blocked region of variant b about variant a, made on first use. */
  region(a: number, b: number): BlockedRegion;
  /** The same of their covers: never smaller, quicker to search. */
  coverRegion(a: number, b: number): BlockedRegion;
}

/** Lower left corner of each item's grown box, and its variant; after the items, the reserved places as they lie. */
export interface Lay {
  readonly variant: Int32Array;
  readonly x: Float64Array;
  readonly y: Float64Array;
  /** Length of the grown strip. */
  readonly length: number;
}

const known = new WeakMap<Instance, Prepared>();

/** Derived once per instance object. The instance must have passed `checkInstance`. */
export function prepared(instance: Instance): Prepared {
  const found = known.get(instance);
  if (found) return found;
  const made = prepare(instance);
  known.set(instance, made);
  return made;
}

function prepare(instance: Instance): Prepared {
  const { stripWidth, spacing, margin } = instance;
  const grow = spacing / 2;
  const height = stripWidth - 2 * margin.side + spacing;
  const shapes: Shape[] = [];
  const variants: Variant[] = [];
  const items: Item[] = [];
  const keys = new Map<string, number>();
  const turns = instance.pieces.reduce((sum, { allowedRotationsDeg }) => sum + allowedRotationsDeg.length, 0);
  const many = turns > MANY_VARIANTS;
  const [cover, share] = many ? [1, OUTWARD_OF_MANY] : [COVER, OUTWARD];
  for (const piece of instance.pieces) {
    const ring = ringOf(piece.polygon);
    const box = boxOf(ring);
    const base = movedRing(ring, 0, false, -box.minX, -box.minY);
    const key = shapeKey(piece, base, stripWidth);
    let shape = keys.get(key);
    if (shape === undefined) {
      shape = shapes.length;
      keys.set(key, shape);
      const made = variantsOf(piece, base, {
        grow,
        height,
        stripWidth,
        cover,
        share,
        shape,
        firstIndex: variants.length,
      });
      variants.push(...made);
      const hull = hullOf(base);
      const sizes = { area: areaOf(base), hullArea: areaOf(hull), diameter: diameterOf(base) };
      shapes.push({ index: shape, ...sizes, variants: made });
    }
    for (let copy = 0; copy < piece.demand; copy++) {
      items.push({ piece, copy, shape, baseX: box.minX, baseY: box.minY });
    }
  }
  const still = (instance.reserved ?? []).flatMap(
    (_, place) => stillOf(instance, place, shapes, variants) ?? [],
  );
  const region = keptRegions(variants.length, (a, b) =>
    blockedRegion(variants[a]!.parts, variants[b]!.parts, spacing),
  );
  const ofCovers = keptRegions(variants.length, (a, b) =>
    blockedRegion(variants[a]!.cover, variants[b]!.cover, spacing),
  );
  const coverRegion = (a: number, b: number) => {
    const [first, second] = [variants[a]!, variants[b]!];
    const same = first.cover === first.parts && second.cover === second.parts;
    return same ? region(a, b) : ofCovers(a, b);
  };
  return {
    instance,
    height,
    touch: TOUCH * stripWidth,
    area: items.reduce((sum, item) => sum + shapes[item.shape]!.area, 0),
    shapes,
    variants,
    items,
    still,
    region,
    coverRegion,
  };
}

/** Regions of pairs of variants, each made once; of very many variants only some are kept at a time. */
function keptRegions(count: number, make: (a: number, b: number) => BlockedRegion) {
  if (count <= DENSE) {
    const all = new Array<BlockedRegion | undefined>(count ** 2);
    return (a: number, b: number) => (all[a * count + b] ??= make(a, b));
  }
  const some = new Map<number, BlockedRegion>();
  return (a: number, b: number) => {
    const key = a * count + b;
    const found = some.get(key);
    if (found) return found;
    if (some.size >= MOST_KEPT) some.clear();
    const made = make(a, b);
    some.set(key, made);
    return made;
  };
}

/** A reserved place, as much of it as lies on the cloth, with a shape of its own; undefined where none does. */
function stillOf(
  { stripWidth, spacing, margin, reserved }: Instance,
  place: number,
  shapes: Shape[],
  variants: Variant[],
): Still | undefined {
  const box = reserved![place]!;
  const [minX, maxX] = [Math.max(margin.end, box.minX), box.maxX];
  const [minY, maxY] = [Math.max(margin.side, box.minY), Math.min(stripWidth - margin.side, box.maxY)];
  if (!(maxX > minX && maxY > minY)) return undefined;
  const [wide, tall, grow] = [maxX - minX, maxY - minY, spacing / 2];
  const corners = Float64Array.of(0, 0, wide, 0, wide, tall, 0, tall);
  const ring = movedRing(corners, 0, false, grow, grow);
  const [index, shape] = [variants.length, shapes.length];
  const frame = { width: wide + spacing, height: tall + spacing, originX: grow, originY: grow };
  const parts = [ring];
  const variant = { index, shape, rotationDeg: 0, flipped: false, ring, parts, cover: parts, ...frame };
  variants.push(variant);
  const area = wide * tall;
  shapes.push({ index: shape, area, hullArea: area, diameter: Math.hypot(wide, tall), variants: [variant] });
  return { place, shape, variant: index, x: minX - margin.end, y: minY - margin.side };
}

/** Every item at nought and in its first turn, and the reserved places where they are. */
export function emptyLay({ items, shapes, still }: Prepared): Lay {
  const count = items.length + still.length;
  const variant = new Int32Array(count);
  const [x, y] = [new Float64Array(count), new Float64Array(count)];
  items.forEach(({ shape }, i) => {
    variant[i] = shapes[shape]!.variants[0]!.index;
  });
  still.forEach((one, k) => {
    variant[items.length + k] = one.variant;
    x[items.length + k] = one.x;
    y[items.length + k] = one.y;
  });
  return { variant, x, y, length: 0 };
}

function shapeKey(piece: Piece, base: Ring, stripWidth: number): string {
  const grid = 1e9 / stripWidth;
  const outline = Array.from(base, (value) => Math.round(value * grid)).join();
  return `${piece.flip}|${[...piece.allowedRotationsDeg].sort((a, b) => a - b).join()}|${outline}`;
}

interface Frame {
  readonly grow: number;
  readonly height: number;
  readonly stripWidth: number;
  readonly cover: number;
  readonly share: number;
  readonly shape: number;
  readonly firstIndex: number;
}

/** Turned and mirrored shapes that fit the strip, equal ones once. */
function variantsOf(piece: Piece, base: Ring, frame: Frame): readonly Variant[] {
  const { grow, height, stripWidth, shape, firstIndex } = frame;
  const clean = withoutIdleVertices(base, IDLE * stripWidth);
  const baseParts = convexParts(outward(clean, frame.share));
  const baseCover = coverParts(baseParts, frame.cover);
  const out: Variant[] = [];
  for (const flipped of piece.flip ? [false, true] : [false])
    for (const rotationDeg of piece.allowedRotationsDeg) {
      const box = boxOf(movedRing(clean, rotationDeg, flipped));
      const [originX, originY] = [grow - box.minX, grow - box.minY];
      const [width, tall] = [box.maxX - box.minX + 2 * grow, box.maxY - box.minY + 2 * grow];
      if (tall > height + 1e-9 * stripWidth) continue;
      const ring = movedRing(clean, rotationDeg, flipped, originX, originY);
      if (out.some((other) => sameOutline(other.ring, ring, 1e-9 * stripWidth))) continue;
      const parts = baseParts.map((part) => movedRing(part, rotationDeg, flipped, originX, originY));
      const few = baseParts.length <= frame.cover;
      const cover = few
        ? parts
        : baseCover.map((part) => movedRing(part, rotationDeg, flipped, originX, originY));
      const index = firstIndex + out.length;
      const size = { width, height: Math.min(tall, height), originX, originY };
      out.push({ index, shape, rotationDeg, flipped, ring, parts, cover, ...size });
    }
  return out;
}

export function sameOutline(a: Ring, b: Ring, tolerance: number): boolean {
  if (a.length !== b.length) return false;
  const n = a.length / 2;
  for (let shift = 0; shift < n; shift++) {
    let same = true;
    for (let k = 0; k < n && same; k++) {
      const l = (k + shift) % n;
      same =
        Math.abs(a[2 * k]! - b[2 * l]!) <= tolerance && Math.abs(a[2 * k + 1]! - b[2 * l + 1]!) <= tolerance;
    }
    if (same) return true;
  }
  return false;
}

/** The engine's lay in the caller's terms. */
export function layoutOf(prep: Prepared, lay: Lay): Layout {
  const { stripWidth, spacing, margin } = prep.instance;
  const [shiftX, shiftY] = [margin.end - spacing / 2, margin.side - spacing / 2];
  const placements = prep.items.map((item, i): Placement => {
    const variant = prep.variants[lay.variant[i]!]!;
    const base = movedRing(Float64Array.of(item.baseX, item.baseY), variant.rotationDeg, variant.flipped);
    return {
      pieceId: item.piece.id,
      copy: item.copy,
      rotationDeg: variant.rotationDeg,
      flipped: variant.flipped,
      x: mm(lay.x[i]! + variant.originX - base[0]! + shiftX),
      y: mm(lay.y[i]! + variant.originY - base[1]! + shiftY),
    };
  });
  const length = mm(lay.length - spacing + 2 * margin.end);
  return { length, density: prep.area / (stripWidth * length), placements };
}

/** Right edge of the last piece in the grown strip. */
export function lengthOf(prep: Prepared, variant: Int32Array, x: Float64Array): number {
  let most = 0;
  for (let i = 0; i < prep.items.length; i++)
    most = Math.max(most, x[i]! + prep.variants[variant[i]!]!.width);
  return most;
}

import { areaOf, hullOf, type Ring } from './ring.ts';

interface Join {
  readonly a: Ring;
  readonly b: Ring;
  readonly hull: Ring;
  /** Area the common hull has beyond the two. */
  readonly added: number;
}

/**
 * At most `most` convex rings that together cover the given convex rings: the two whose common hull adds least
 * area are joined, again and again. A larger shape, so laying by it never makes an overlap, only loses some cloth.
 */
export function coverParts(parts: readonly Ring[], most: number): readonly Ring[] {
  if (most === 1) return [hullOf(Float64Array.from(parts.flatMap((part) => [...part])))];
  let rings = [...parts];
  let joins = rings.flatMap((a, i) => rings.slice(i + 1).map((b) => join(a, b)));
  while (rings.length > most) {
    const best = joins.reduce((least, each) => (each.added < least.added ? each : least));
    const gone = (ring: Ring) => ring === best.a || ring === best.b;
    rings = rings.filter((ring) => !gone(ring));
    joins = joins.filter(({ a, b }) => !gone(a) && !gone(b));
    for (const ring of rings) joins.push(join(ring, best.hull));
    rings.push(best.hull);
  }
  return rings;
}

function join(a: Ring, b: Ring): Join {
  const hull = hullOf(Float64Array.of(...a, ...b));
  return { a, b, hull, added: areaOf(hull) - areaOf(a) - areaOf(b) };
}

import { type Millimetre, mm, type Newton, newton, ok, type Result, refuse } from '@panewright/quantity';
import { faceSpan } from './magnet.ts';
import { checkPair, type MagnetPair, type PairRefusal, pairForce } from './pairForce.ts';

/** Which pole of the panel's magnet faces away from the glass. */
export type PoleOut = 'north' | 'south';

/** A pair at a place on the glass. Blocks keep their sides parallel to x and y. */
export interface PlacedPair {
  readonly pair: MagnetPair;
  readonly x: Millimetre;
  readonly y: Millimetre;
  readonly poleOut: PoleOut;
}

export interface NeighbouredPull {
  /** The pair alone. */
  readonly own: Newton;
  /** With the glass magnets of its neighbours acting on it. */
  readonly pull: Newton;
  /** Neighbours near enough to count. */
  readonly neighbours: number;
}

export type NeighbourRefusal =
  | { readonly code: 'PLACE_NOT_FINITE'; readonly at: number; readonly x: Millimetre; readonly y: Millimetre }
  | { readonly code: 'PLACED_PAIR_REFUSED'; readonly at: number; readonly because: PairRefusal };

/** Neighbours further off than this many spans of the larger magnet change a pull by less than a tenth of 1 %. */
const NEAR_SPANS = 3;

/** What the fixed magnet of `other` adds to the pull on the panel's magnet of `here`. */
function added(here: PlacedPair, other: PlacedPair): number {
  const offset = here.pair.offset ?? { dx: mm(0), dy: mm(0) };
  const dx = mm(here.x + offset.dx - other.x);
  const dy = mm(here.y + offset.dy - other.y);
  const cross = pairForce({
    a: other.pair.a,
    b: here.pair.b,
    remanenceA: other.pair.remanenceA,
    remanenceB: here.pair.remanenceB,
    gap: here.pair.gap,
    offset: { dx, dy },
  });
  if (!cross.ok) throw new Error(`checked pairs were refused together: ${cross.refusal.code}`);
  return (here.poleOut === other.poleOut ? -1 : 1) * cross.value.z;
}

/**
 * Pull of every pair along an edge, with neighbours nearer than three spans taken in pair by pair. Like poles out
 * weaken one another, alternate poles strengthen.
 *
 * @returns newtons for each place, in the order given
 * @range places on one pane; magnets of one panel do not pull each other off the glass, being level
 * @accuracy exact for the neighbours counted; those left out matter less than 0.5 % each
 * @refuses PLACE_NOT_FINITE, PLACED_PAIR_REFUSED
 * @source sources.md#magnets-neighbours
 */
export function pullWithNeighbours(
  places: readonly PlacedPair[],
): Result<readonly NeighbouredPull[], NeighbourRefusal> {
  const own: number[] = [];
  for (const [at, { pair, x, y }] of places.entries()) {
    if (!Number.isFinite(x + y)) return refuse({ code: 'PLACE_NOT_FINITE', at, x, y });
    const because = checkPair(pair);
    if (because) return refuse({ code: 'PLACED_PAIR_REFUSED', at, because });
    const alone = pairForce(pair);
    if (!alone.ok) return refuse({ code: 'PLACED_PAIR_REFUSED', at, because: alone.refusal });
    own.push(0 - alone.value.z);
  }
  const span = ({ pair }: PlacedPair) => Math.max(faceSpan(pair.a), faceSpan(pair.b));
  return ok(
    places.map((here, i) => {
      let pull = own[i]!;
      let neighbours = 0;
      for (const [j, other] of places.entries()) {
        if (j === i) continue;
        const distance = Math.hypot(here.x - other.x, here.y - other.y);
        if (distance >= NEAR_SPANS * Math.max(span(here), span(other))) continue;
        pull += added(here, other);
        neighbours++;
      }
      return { own: newton(own[i]!), pull: newton(pull), neighbours };
    }),
  );
}

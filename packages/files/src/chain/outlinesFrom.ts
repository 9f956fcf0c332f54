import { point } from '@panewright/geometry';
import { type Millimetre, mm, ok, type Result, refuse } from '@panewright/quantity';
import type { Chain, Stroke } from '../curve/drawing.ts';
import type { FileNote, FileRefusal } from '../fileRefusal.ts';
import { chainLength, gapOf, joinChains } from './joinChains.ts';
import { type Nested, nestOutlines } from './nestOutlines.ts';
import { type PlacedOutline, ringOutline } from './ringOutline.ts';
import { strokePieces } from './strokePieces.ts';
import { withoutDuplicateChains, withoutDuplicateOutlines } from './withoutDuplicates.ts';

const MOST_OUTLINES = 1000;
/** An open line whose ends are nearer than this part of its length was meant to be closed. */
const MEANT_CLOSED = 0.5;

export interface Tolerances {
  readonly closeWithin: Millimetre;
  readonly arcTolerance: Millimetre;
}

/** Strokes in mm to outlines: pieces, joints, rings, nesting. */
export function outlinesFrom(
  strokes: readonly Stroke[],
  { closeWithin, arcTolerance }: Tolerances,
): Result<{ readonly outlines: readonly Nested[]; readonly notes: readonly FileNote[] }, FileRefusal> {
  const pieces = strokePieces(strokes, arcTolerance);
  if (!pieces.ok) return pieces;
  const single = withoutDuplicateChains(pieces.value.chains);
  const joined = joinChains(single.chains, closeWithin);
  if (!joined.ok) return joined;
  const { rings, open } = joined.value;
  if (rings.length > MOST_OUTLINES)
    return refuse({ code: 'FILE_TOO_LARGE', what: 'outlines', found: rings.length, most: MOST_OUTLINES });
  const left = openLines(open, rings.length === 0, closeWithin);
  if (!left.ok) return left;
  const placed: PlacedOutline[] = [];
  for (const ring of rings) {
    const outline = ringOutline(ring);
    if (!outline.ok) return outline;
    if (outline.value) placed.push(outline.value);
  }
  const distinct = withoutDuplicateOutlines(placed);
  const nested = nestOutlines(distinct.outlines);
  if (!nested.ok) return nested;
  const { outer, notes } = nested.value;
  if (outer.length === 0) return refuse({ code: 'NO_OUTLINE', layers: layersOf(strokes) });
  const all = [pieces.value.notes, single.notes, joined.value.notes, left.value, distinct.notes, notes];
  return ok({ outlines: outer, notes: all.flat() });
}

export const layersOf = (strokes: readonly Stroke[]): readonly string[] => [
  ...new Set(strokes.flatMap(({ layer }) => (layer === undefined ? [] : [layer]))),
];

/** An open line that was meant to be closed is refused; ticks, crosses and the like are noted, unless all is open. */
function openLines(
  open: readonly Chain[],
  nothingElse: boolean,
  closeWithin: Millimetre,
): Result<readonly FileNote[], FileRefusal> {
  const meant = open.find((chain) => gapOf(chain) < MEANT_CLOSED * chainLength(chain));
  const worst = meant ?? (nothingElse ? longest(open) : undefined);
  if (worst) {
    const [from, to] = [worst.pieces.at(-1)!.to, worst.pieces[0]!.from];
    return refuse({
      ...{ code: 'OUTLINE_OPEN', from: point(from.x, from.y), to: point(to.x, to.y), gap: mm(gapOf(worst)) },
      closeWithin,
      ...(worst.layer === undefined ? {} : { layer: worst.layer }),
      place: worst.pieces.at(-1)!.place,
    });
  }
  const byLayer = new Map<string | undefined, Chain[]>();
  for (const chain of open) {
    const held = byLayer.get(chain.layer);
    if (held) held.push(chain);
    else byLayer.set(chain.layer, [chain]);
  }
  return ok(
    [...byLayer].map(
      ([layer, chains]): FileNote => ({
        code: 'OPEN_LINES_LEFT_OUT',
        count: chains.length,
        ...(layer === undefined ? {} : { layer }),
        place: chains[0]!.pieces[0]!.place,
      }),
    ),
  );
}

const longest = (chains: readonly Chain[]): Chain | undefined =>
  chains.reduce<Chain | undefined>(
    (best, chain) => (best && chainLength(best) >= chainLength(chain) ? best : chain),
    undefined,
  );

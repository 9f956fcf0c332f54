import type { Fabric } from '../document/catalogue.ts';
import type { Finding } from '../plan/finding.ts';
import type { CutPiece } from '../plan/plan.ts';
import type { Made } from '../take-off/needs.ts';
import type { ClothPlan } from './clothPlan.ts';
import { cutPieces, type Way } from './cutPieces.ts';
import { boughtOf, ruleCosts } from './ruleCosts.ts';

type Lay = (pieces: readonly CutPiece[]) => ClothPlan;

/**
 * All of a cloth one way of it: up or across, whichever has less bought, then the shorter lay. A grain that was chosen
 * for a panel decides for all; where panels were given both, each keeps its own and a finding says so.
 *
 * @param own the pieces as they may lie
 */
export function laidOneWay(
  made: readonly Made[],
  fabric: Fabric,
  own: readonly CutPiece[],
  lay: Lay,
): ClothPlan {
  const chosen = (way: Way) =>
    made.filter(({ panel, materials }) => materials.fabric.id === fabric.id && panel.choices.grain === way);
  const [up, across] = [chosen('warpUp'), chosen('warpAcross')];
  if (up.length > 0 && across.length > 0) {
    const finding = grainsDiffer(fabric, up, across);
    const asTheyMay = lay(own);
    return { ...asTheyMay, findings: [...asTheyMay.findings, finding] };
  }
  const ways: readonly Way[] =
    up.length > 0 ? ['warpUp'] : across.length > 0 ? ['warpAcross'] : ['warpUp', 'warpAcross'];
  const tried = ways.map((way) => lay(cutPieces(made, way).filter((piece) => piece.fabric === fabric.id)));
  const best = tried.reduce((a, b) => (isLess(b, a) ? b : a));
  const loose = lay(own);
  if (best.lays.length === 0 && loose.lays.length > 0)
    return { ...loose, findings: [...loose.findings, tooWide(fabric, tried)] };
  if (loose.lays.length === 0) return best;
  const costs = ruleCosts('SAME_WAY_COSTS', fabric, boughtOf(rollOf(best)), boughtOf(rollOf(loose)));
  return { ...best, findings: [...best.findings, ...costs] };
}

/** The pieces keep the ways they may lie: no roll takes these where they are turned with the others. */
function tooWide(fabric: Fabric, tried: readonly ClothPlan[]): Finding {
  const openings = tried.flatMap(({ findings, pieces }) =>
    findings.flatMap((one) =>
      one.code === 'PIECE_WIDER_THAN_ROLL'
        ? (pieces.find(({ piece }) => piece === one.numbers.piece)?.openings ?? [])
        : [],
    ),
  );
  return {
    ...{ severity: 'doubt', code: 'SAME_WAY_TOO_WIDE', where: { item: fabric.id } },
    numbers: { fabric: fabric.name, openings: [...new Set(openings)].join(' ') },
  };
}

/** What a cloth takes; no lay on a roll costs nothing where offcuts take all, and is no lay where none was found. */
function takenFor(cloth: ClothPlan): { readonly price: number; readonly length: number } {
  if (cloth.lays.length === 0) return { price: Infinity, length: Infinity };
  const roll = rollOf(cloth);
  return { price: boughtOf(roll).price, length: roll?.length.value ?? 0 };
}

function isLess(a: ClothPlan, b: ClothPlan): boolean {
  const [x, y] = [takenFor(a), takenFor(b)];
  return x.price < y.price || (x.price === y.price && x.length < y.length);
}

const rollOf = ({ lays }: ClothPlan) => lays.find(({ bought }) => bought !== null);

const openingsOf = (made: readonly Made[]): string =>
  made.flatMap(({ pattern }) => pattern.members.map(({ opening }) => opening)).join(' ');

const grainsDiffer = (fabric: Fabric, up: readonly Made[], across: readonly Made[]): Finding => ({
  ...{ severity: 'doubt', code: 'SAME_WAY_GRAINS', where: { item: fabric.id } },
  numbers: { fabric: fabric.name, up: openingsOf(up), across: openingsOf(across) },
});

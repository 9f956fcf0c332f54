import type { Fabric } from '../document/catalogue.ts';
import type { Finding } from '../plan/finding.ts';
import type { CutPiece } from '../plan/plan.ts';
import type { Made } from '../take-off/needs.ts';
import type { ClothPlan } from './clothPlan.ts';
import { cutPieces, type Way } from './cutPieces.ts';

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
  return { ...best, findings: [...best.findings, ...costFinding(fabric, best, loose)] };
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

/** What is bought for a cloth; no lay on a roll costs nothing where offcuts take all, and is no lay where none was found. */
function boughtFor({ lays }: ClothPlan): { readonly price: number; readonly length: number } {
  if (lays.length === 0) return { price: Infinity, length: Infinity };
  const roll = lays.find(({ bought }) => bought !== null);
  return { price: roll?.bought?.price ?? 0, length: roll?.length.value ?? 0 };
}

function isLess(a: ClothPlan, b: ClothPlan): boolean {
  const [x, y] = [boughtFor(a), boughtFor(b)];
  return x.price < y.price || (x.price === y.price && x.length < y.length);
}

function costFinding(fabric: Fabric, oneWay: ClothPlan, loose: ClothPlan): readonly Finding[] {
  const lengthOf = ({ lays }: ClothPlan) => lays.find(({ bought }) => bought)?.bought?.length ?? 0;
  const price = boughtFor(oneWay).price - boughtFor(loose).price;
  if (!(price > 0 && Number.isFinite(price))) return [];
  const numbers = { fabric: fabric.name, price, length: lengthOf(oneWay) - lengthOf(loose) };
  return [{ severity: 'note', code: 'SAME_WAY_COSTS', where: { item: fabric.id }, numbers }];
}

const openingsOf = (made: readonly Made[]): string =>
  made.flatMap(({ pattern }) => pattern.members.map(({ opening }) => opening)).join(' ');

const grainsDiffer = (fabric: Fabric, up: readonly Made[], across: readonly Made[]): Finding => ({
  ...{ severity: 'doubt', code: 'SAME_WAY_GRAINS', where: { item: fabric.id } },
  numbers: { fabric: fabric.name, up: openingsOf(up), across: openingsOf(across) },
});

import { type Outline, outlineFrom, point } from '@panewright/geometry';
import type { Catalogue, Fabric } from '../document/catalogue.ts';
import type { Job } from '../document/job.ts';
import type { Offcut } from '../document/offcuts.ts';
import type { Finding } from '../plan/finding.ts';
import type { CutPiece, LayPlan, OffcutSaving } from '../plan/plan.ts';
import { type LayInput, layPlan } from './layPlan.ts';
import { leftOver } from './leftOver.ts';
import { openingsOn } from './openingsOn.ts';
import { boughtOf, ruleCosts } from './ruleCosts.ts';
import { inOrderOfCopies, type StockLay, stockLays } from './stockLays.ts';
import type { Together } from './together.ts';

/** How one cloth is cut: lays on offcuts first, then on the roll. */
export interface ClothPlan {
  /** As given, with the openings of each in the order of its copies. */
  readonly pieces: readonly CutPiece[];
  readonly lays: readonly LayPlan[];
  readonly saving: OffcutSaving | null;
  readonly findings: readonly Finding[];
}

type RollInput = Omit<LayInput, 'name' | 'pieces' | 'byHand'> & Pick<LayInput, 'byHand'>;

interface Tried {
  /** null: nothing is left for the roll. */
  readonly roll: LayPlan | null;
  readonly used: readonly StockLay[];
  readonly findings: readonly Finding[];
}

type ClothInput = RollInput & {
  readonly stock: readonly Offcut[];
  readonly leastOffcut: number;
  readonly together: Together | null;
  /** The job's id: what of the stock is marked as cut for it. */
  readonly job: string;
};

/**
 * The lays of one cloth. Offcuts are used where less has to be bought for it: as many of them as make the purchase
 * least, and no more.
 *
 * @param stock offcuts that this job may use
 * @param name names the lays in their order
 */
export function clothPlan(
  input: ClothInput,
  pieces: readonly CutPiece[],
  name: (index: number) => string,
): ClothPlan {
  const { fabric, stock, leastOffcut, together } = input;
  const alone = onRoll(input, pieces, [], null);
  const stocked = alone.roll !== null && stock.length > 0;
  const taken = stocked ? best(input, pieces, alone, together) : alone;
  const final = input.byHand ? onRoll(input, restOf(pieces, taken.used), taken.used, input.byHand) : taken;
  const lays = [
    ...(final.roll ? [final.roll] : []),
    ...final.used.map(({ lay }): LayPlan => ({ ...lay, lay: '' })),
  ].map((lay, k) => ({
    ...lay,
    lay: name(k),
    leaves: leavesOf(lay, worthOf(fabric, lay, stock), leastOffcut),
  }));
  const saving = final.used.length > 0 ? savingOf(fabric, alone.roll!, taken) : null;
  const said = [
    ...(saving ? [usedFinding(saving, final.used)] : []),
    ...(together && stocked ? togetherFindings(input, pieces, taken, best(input, pieces, alone, null)) : []),
  ];
  return {
    ...{ pieces: inOrderOfCopies(pieces, final.used), lays, saving },
    findings: [...final.findings, ...said],
  };
}

/** The purchase that is least with some of the stock, the fullest first, or with none. */
function best(input: ClothInput, all: readonly CutPiece[], without: Tried, together: Together | null): Tried {
  const { fabric, stock, spacing, seed } = input;
  const filled = stockLays(fabric, all, stock, spacing, seed, together);
  let least = without;
  for (let k = 1; k <= filled.length; k++) {
    const used = filled.slice(0, k);
    const tried = onRoll(input, restOf(all, used), used, null);
    if (priceOf(tried) < priceOf(least)) least = tried;
  }
  return least;
}

/** What keeping together costs, and which offcuts were cut for this job that it leaves no use for. */
function togetherFindings(
  { fabric, job }: ClothInput,
  pieces: readonly CutPiece[],
  taken: Tried,
  loose: Tried,
): readonly Finding[] {
  const kept = new Set(taken.used.map(({ offcut }) => offcut.id));
  const cut = loose.used.filter(({ offcut }) => offcut.used?.job === job && !kept.has(offcut.id));
  const inOrder = inOrderOfCopies(pieces, loose.used);
  return [
    ...ruleCosts('KEPT_TOGETHER_COSTS', fabric, boughtOf(taken.roll), boughtOf(loose.roll)),
    ...cut.map(
      ({ offcut, lay }): Finding => ({
        ...{ severity: 'doubt', code: 'KEPT_TOGETHER_CUT', where: { item: fabric.id } },
        numbers: { offcut: offcut.name, openings: openingsOn(lay, inOrder).join(' ') },
      }),
    ),
  ];
}

const restOf = (pieces: readonly CutPiece[], used: readonly StockLay[]) => used.at(-1)?.rest ?? pieces;
const priceOf = ({ roll }: Tried): number => boughtOf(roll).price;

function onRoll(
  input: RollInput,
  pieces: readonly CutPiece[],
  used: readonly StockLay[],
  byHand: LayInput['byHand'] | null,
): Tried {
  const findings: Finding[] = [];
  const roll =
    pieces.length > 0
      ? layPlan({ ...input, name: '', pieces, byHand: byHand ?? undefined }, (finding) =>
          findings.push(finding),
        )
      : null;
  return { roll, used, findings };
}

/** Money for a square millimetre of the cloth a lay is on. */
function worthOf({ rolls }: Fabric, { rollWidth, offcut }: LayPlan, stock: readonly Offcut[]): number {
  const kept = stock.find(({ id }) => id === offcut?.id);
  if (kept) return kept.worth / (kept.along * kept.across);
  const roll = rolls.find(({ width }) => width === rollWidth)!;
  return roll.price / (roll.step * roll.width);
}

/** Of a lay, what leaves of its cloth are counted by. */
export type Leaving = Pick<
  LayPlan,
  'bought' | 'offcut' | 'selvage' | 'rollWidth' | 'placements' | 'spacing' | 'reserved'
> & { readonly length: { readonly value: number } };

/**
 * Rectangles a lay leaves, and what each is worth.
 *
 * @param worth of a square millimetre, money
 * @source see leftOver
 */
export const leavesOf = (lay: Leaving, worth: number, least: number): LayPlan['leaves'] =>
  leftOver(
    {
      length: lay.bought?.length ?? lay.offcut?.along ?? lay.length.value,
      from: lay.selvage,
      to: lay.rollWidth - lay.selvage,
      pieces: [...lay.placements.map(({ outline }) => outline), ...lay.reserved.map(outlineOfPlace)],
      spacing: lay.spacing,
    },
    least,
  ).map((piece) => ({ ...piece, worth: Math.round(piece.along * piece.across * worth) }));

function outlineOfPlace({ from, to, near, far }: LayPlan['reserved'][number]): Outline {
  const made = outlineFrom([point(from, near), point(to, near), point(to, far), point(from, far)]);
  if (!made.ok) throw new Error(`a reserved place is no outline: ${made.refusal.code}`);
  return made.value;
}

function savingOf({ id }: Fabric, without: LayPlan, { roll, used }: Tried): OffcutSaving {
  const [before, after] = [without.bought!, roll?.bought ?? { length: 0, price: 0 }];
  return {
    fabric: id,
    offcuts: used.map(({ offcut }) => offcut.id),
    price: before.price - after.price,
    length: before.length - after.length,
  };
}

const usedFinding = ({ fabric, price }: OffcutSaving, used: readonly StockLay[]): Finding => ({
  severity: 'note',
  code: 'OFFCUTS_USED',
  where: { item: fabric },
  numbers: {
    offcuts: used.map(({ offcut: { name, place } }) => (place ? `${name} (${place})` : name)).join(', '),
    pieces: used.reduce((sum, { lay }) => sum + lay.placements.length, 0),
    saved: price,
  },
});

/** Offcuts of a cloth that a job may use: kept from another job, not used by another, and not left be by this one. */
export const stockFor = (
  { id, offcutsLeftBe = [] }: Pick<Job, 'id' | 'offcutsLeftBe'>,
  { offcuts = [] }: Pick<Catalogue, 'offcuts'>,
  fabric: string,
): readonly Offcut[] =>
  offcuts.filter(
    (one) =>
      one.fabric === fabric &&
      one.from.job !== id &&
      (one.used === undefined || one.used.job === id) &&
      !offcutsLeftBe.includes(one.id),
  );

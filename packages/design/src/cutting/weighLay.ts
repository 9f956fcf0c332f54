import { type LayRefusal, layoutOfPlaces } from '@panewright/packing';
import { ok, type Result, refuse } from '@panewright/quantity';
import type { LaidPlace } from '../document/layByHand.ts';
import type { LayPlan } from '../plan/plan.ts';
import { leavesOf } from './clothPlan.ts';
import { placedByHand } from './handLay.ts';
import { placementsOf, wholeSteps } from './layPlan.ts';
import { instanceOf, type LayFrame } from './laySearch.ts';

/** What a lay comes to, to be set beside another of the same pieces. */
export interface WeighedLay {
  readonly rollWidth: number;
  readonly length: number;
  readonly density: number;
  /** null: a roll of this width is not sold any more. */
  readonly bought: LayPlan['bought'];
  readonly leaves: LayPlan['leaves'];
  readonly placements: LayPlan['placements'];
}

/**
 * A lay by its places: length, purchase and what it leaves, by the same rules as the plan's own.
 *
 * @param least a rectangle narrower than this is not counted as left over, mm
 * @refuses every LayRefusal: a copy too few, or one that may not lie where it does
 * @source none: the plan's own figures, of other places
 */
export function weighLay(
  frame: LayFrame,
  places: readonly LaidPlace[],
  least: number,
): Result<WeighedLay, LayRefusal> {
  const { fabric, rollWidth, pieces, spacing, reserved = [] } = frame;
  const placements = placedByHand(pieces, places);
  for (const { piece, count } of pieces) {
    const laid = placements.filter(({ pieceId }) => pieceId === piece).length;
    if (laid !== count) return refuse({ code: 'LAY_DEMAND_NOT_MET', pieceId: piece, wanted: count, laid });
  }
  const whole = layoutOfPlaces(instanceOf(frame), placements);
  if (!whole.ok) return whole;
  const { length, density } = whole.value;
  const roll = fabric.rolls.find(({ width }) => width === rollWidth);
  const steps = roll ? wholeSteps(roll, length) : 0;
  const bought = roll ? { length: steps * roll.step, price: steps * roll.price } : null;
  const drawn = placementsOf({ placements }, pieces);
  const cloth = { bought, offcut: null, length: { value: length }, placements: drawn, spacing };
  const leaves = leavesOf(
    {
      ...cloth,
      rollWidth,
      selvage: fabric.selvage,
      reserved: reserved.filter((one) => one.rollWidth === rollWidth),
    },
    roll ? roll.price / (roll.step * roll.width) : 0,
    least,
  );
  return ok({ rollWidth, length, density, bought, leaves, placements: drawn });
}

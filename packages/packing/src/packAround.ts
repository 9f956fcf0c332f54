import { ok, type Result, refuse } from '@panewright/quantity';
import { checkInstance } from './checkInstance.ts';
import { construct, mannerFor } from './construct/construct.ts';
import type { Instance, InstanceRefusal, Layout, Placement } from './instance.ts';
import { keptOf } from './layOf.ts';
import { type Lay, layoutOf, prepared } from './prepared.ts';
import { random, randomState } from './random.ts';
import { checkPlaces } from './verify/checkPlaces.ts';
import type { LayRefusal } from './verify/verifyLay.ts';

/**
 * A lay about copies that stay where a hand put them: the rest is laid in many orders, each piece at the leftmost free
 * spot, and the shortest lay kept. Shorter lays may exist: kept pieces make gaps that only a search would close.
 *
 * @param kept copies that are not moved, in any order
 * @param budget evaluations to spend (some two million a second); one order is always tried
 * @returns the kept copies exactly as they were given, the others where they were laid
 * @refuses every InstanceRefusal; every LayRefusal about `kept`
 * @source leftmost placing in the order of size: nothing is claimed for it but that it is free of overlap
 */
export function packAround(
  instance: Instance,
  kept: readonly Placement[],
  budget: number,
  seed: number,
): Result<Layout, InstanceRefusal | LayRefusal> {
  const checked = checkInstance(instance);
  if (!checked.ok) return checked;
  const places = checkPlaces(instance, kept);
  if (!places.ok) return refuse(places.refusal);
  const prep = prepared(instance);
  const dice = random(randomState(seed));
  const still = keptOf(prep, kept);
  let best: Lay | undefined;
  let spent = 0;
  for (let k = 0; k === 0 || spent < budget; k++) {
    const { lay, cost } = construct(prep, mannerFor(k, dice), dice, Number.POSITIVE_INFINITY, still);
    if (best === undefined || lay.length < best.length - prep.touch) best = lay;
    spent += Math.max(1, cost);
    if (still.items.length === prep.items.length) break;
  }
  const layout = layoutOf(prep, best!);
  const given = new Map(kept.map((placement) => [nameOf(placement), placement]));
  const placements = layout.placements.map((placement) => given.get(nameOf(placement)) ?? placement);
  return ok({ ...layout, placements });
}

const nameOf = ({ pieceId, copy }: Placement) => `${typeof pieceId} ${pieceId} ${copy}`;

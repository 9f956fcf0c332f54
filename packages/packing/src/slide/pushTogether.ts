import { mm, ok, type Result, refuse } from '@panewright/quantity';
import { checkInstance } from '../checkInstance.ts';
import type { Instance, InstanceRefusal, Layout, Placement } from '../instance.ts';
import { keptOf } from '../layOf.ts';
import { type Lay, type Prepared, prepared } from '../prepared.ts';
import { layoutOfPlaces } from '../verify/checkPlaces.ts';
import type { LayRefusal } from '../verify/verifyLay.ts';
import { stopsOf, type Way } from './slide.ts';

/** Rounds of sliding at most; each brings every piece up to what was in its way the round before. */
const ROUNDS = 200;

/**
 * Copies pushed together: one after another, from the cut end on, each slides back until it touches, then down across
 * the cloth until it touches, and so on until nothing moves. None turns, none passes another.
 *
 * @param placements some or all copies, lying as a lay may
 * @returns the same copies in the same order; never longer than before
 * @accuracy a round that moves every piece by less than a touch (2e-8 of the width) is the last
 * @refuses every InstanceRefusal; every LayRefusal about `placements`
 * @source none: sliding along straight lines through exact blocked regions
 */
export function pushTogether(
  instance: Instance,
  placements: readonly Placement[],
): Result<Layout, InstanceRefusal | LayRefusal> {
  const checked = checkInstance(instance);
  if (!checked.ok) return checked;
  const before = layoutOfPlaces(instance, placements);
  if (!before.ok) return refuse(before.refusal);
  const prep = prepared(instance);
  const { items, lay } = keptOf(prep, placements);
  const part = only(prep, lay, items);
  const pushed = pressed(prep, part, items.length);
  const moved = placements.map((one, k) => ({
    ...one,
    x: mm(one.x - (part.x[k]! - pushed.x[k]!)),
    y: mm(one.y - (part.y[k]! - pushed.y[k]!)),
  }));
  const after = layoutOfPlaces(instance, moved);
  if (!after.ok) throw new Error(`pieces pushed together failed their check: ${after.refusal.code}`);
  return ok(after.value);
}

/** A lay of some items alone, and the reserved places. */
export function only(prep: Prepared, lay: Lay, items: readonly number[]): Lay {
  const all = [...items, ...prep.still.map((_, k) => prep.items.length + k)];
  return {
    variant: Int32Array.from(all, (i) => lay.variant[i]!),
    x: Float64Array.from(all, (i) => lay.x[i]!),
    y: Float64Array.from(all, (i) => lay.y[i]!),
    length: lay.length,
  };
}

function pressed(prep: Prepared, from: Lay, count: number): Lay {
  const lay: Lay = { ...from, x: from.x.slice(), y: from.y.slice() };
  const order = Array.from({ length: count }, (_, i) => i).sort((a, b) => from.x[a]! - from.x[b]! || a - b);
  for (let round = 0; round < ROUNDS; round++) {
    let most = 0;
    for (const way of ['back', 'down'] satisfies Way[])
      for (const i of order) {
        const by = Math.min(...stopsOf(prep, lay, i, way).map(({ gap }) => gap));
        const along = way === 'back' ? lay.x : lay.y;
        along[i] = along[i]! - by;
        most = Math.max(most, by);
      }
    if (most <= prep.touch) break;
  }
  return lay;
}

import { type Millimetre, mm, ok, type Result, refuse } from '@panewright/quantity';
import { checkInstance } from '../checkInstance.ts';
import type { Instance, InstanceRefusal, Placement } from '../instance.ts';
import { keptOf } from '../layOf.ts';
import { type Prepared, prepared } from '../prepared.ts';
import { layoutOfPlaces } from '../verify/checkPlaces.ts';
import type { LaidCopy, LayRefusal } from '../verify/verifyLay.ts';
import { only } from './pushTogether.ts';
import { stopsOf } from './slide.ts';

/** Why a lay is as long as it is. */
export interface BindingChain {
  /** From the cut end to the end of the lay: each lies against the one before. */
  readonly copies: readonly LaidCopy[];
  /** What the first lies against: the cut end, or a reserved place by its index. */
  readonly from: 'cut end' | number;
  /** By how much the lay would shorten if all pieces slid back along the cloth; 0 where the chain is tight. */
  readonly play: Millimetre;
}

/**
 * The chain of pieces that sets a lay's length: pushed back along the cloth as far as all will go, the pieces end
 * nowhere later than this chain. While its pieces lie at these heights, turned as they are, in this order, no sliding
 * along the cloth shortens the lay by more than `play`.
 *
 * @range one copy at least
 * @accuracy lengths to a touch (2e-8 of the width)
 * @refuses every InstanceRefusal; every LayRefusal about `placements`
 * @source longest path through what stops each piece, by shortest slack: sources.md#dijkstra-1959
 */
export function bindingChain(
  instance: Instance,
  placements: readonly Placement[],
): Result<BindingChain, InstanceRefusal | LayRefusal> {
  const checked = checkInstance(instance);
  if (!checked.ok) return checked;
  const layout = layoutOfPlaces(instance, placements);
  if (!layout.ok) return refuse(layout.refusal);
  const prep = prepared(instance);
  const { items, lay } = keptOf(prep, placements);
  const part = only(prep, lay, items);
  const count = items.length;
  const stops = Array.from({ length: count }, (_, i) => stopsOf(prep, part, i, 'back'));
  const { slack, before } = slacks(prep, stops, count);
  const end = (i: number) => part.x[i]! + prep.variants[part.variant[i]!]!.width;
  const order = Array.from({ length: count }, (_, i) => i);
  const after = (i: number) => end(i) - slack[i]!;
  const last = order.reduce((a, b) => (after(b) > after(a) + prep.touch ? b : a));
  const copies: LaidCopy[] = [];
  let at = last;
  for (; at >= 0 && at < count; at = before[at]!) {
    const { pieceId, copy } = placements[at]!;
    copies.unshift({ pieceId, copy });
  }
  const play = Math.max(...order.map(end)) - after(last);
  return ok({
    copies,
    from: at < 0 ? 'cut end' : prep.still[at - count]!.place,
    play: mm(play <= 2 * prep.touch * count ? 0 : play),
  });
}

/** How far each piece can go back when all do, and what stops it in the end: the shortest way to what lies still. */
function slacks(prep: Prepared, stops: readonly (readonly { gap: number; by: number }[])[], count: number) {
  const slack = new Float64Array(count).fill(Infinity);
  const before = new Int32Array(count).fill(-1);
  const open = new Set(Array.from({ length: count }, (_, i) => i));
  const follows: { readonly i: number; readonly gap: number }[][] = Array.from({ length: count }, () => []);
  const offer = (i: number, value: number, by: number) => {
    if (value >= slack[i]! - prep.touch / 4) return;
    slack[i] = value;
    before[i] = by;
  };
  stops.forEach((all, i) => {
    for (const { gap, by } of all)
      if (by < 0 || by >= count) offer(i, gap, by);
      else follows[by]!.push({ i, gap });
  });
  while (open.size > 0) {
    let next = -1;
    for (const i of open) if (next < 0 || slack[i]! < slack[next]!) next = i;
    open.delete(next);
    for (const { i, gap } of follows[next]!) if (open.has(i)) offer(i, slack[next]! + gap, next);
  }
  return { slack, before };
}

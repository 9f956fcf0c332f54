import type { Draft } from 'immer';
import { useMemo } from 'react';
import { type EdgePlace, footPlace, type HandPlaced, type Job } from '../contract.ts';
import type { Problem } from '../job/documentStore.ts';
import { useJob, useWork } from '../job/work.ts';
import {
  type PointRef,
  removedOf,
  withAdded,
  withMoved,
  withPutBack,
  withRemoved,
  withRuled,
} from './handEdits.ts';
import type { HoldView } from './useHoldView.ts';

/** What a maker can do with a panel's hold points by hand. Each call is one step of undo once it is settled. */
export interface HandPlacing {
  /** How each point can be set, in the order of the points; null on a panel without edges to measure from. */
  readonly refs: readonly (PointRef | null)[];
  readonly placed: readonly HandPlaced[];
  /** The opening whose entry the panel follows where that is not its own: nothing can be set here. */
  readonly elsewhere: string | null;
  readonly removed: ReturnType<typeof removedOf>;
  readonly move: (ref: PointRef, to: EdgePlace) => Problem | null;
  readonly remove: (ref: PointRef) => void;
  readonly add: (at: EdgePlace) => void;
  readonly toRule: (ref: PointRef) => void;
  readonly putBack: (rule: NonNullable<PointRef['rule']>) => void;
  readonly allToRule: () => void;
  readonly settle: () => void;
}

const NONE: readonly HandPlaced[] = [];

/** Hold points set by hand on the panel shown; kept with the first opening of its pattern. */
export function useHandPlacing(view: HoldView | null): HandPlacing | null {
  const { job } = useWork();
  const entries = useJob((state) => state.document.heldByHand);
  return useMemo(() => {
    if (!view) return null;
    const { panel, pattern, hold } = view.held;
    const owner = pattern.members[0]!.opening;
    const placed = entries?.find(({ opening }) => opening === owner)?.placed ?? NONE;
    const of = hold.byHandOf ?? null;
    const refs = hold.points.map((point): PointRef | null => {
      const place = footPlace(panel, point);
      return place ? { rule: point.rule ?? null, place } : null;
    });
    const put = (next: readonly HandPlaced[] | null) =>
      next ? job.edit(`heldByHand.${owner}`, (draft) => putPlaced(draft, owner, next)) : null;
    const done = (next: readonly HandPlaced[]) => {
      put(next);
      job.settle();
    };
    return {
      refs,
      placed,
      elsewhere: of !== null && of !== owner ? of : null,
      removed: removedOf(placed),
      move: (ref, to) => put(withMoved(placed, ref, to, panel)),
      remove: (ref) => done(withRemoved(placed, ref)),
      add: (at) => done(withAdded(placed, at)),
      toRule: (ref) => done(withRuled(placed, ref)),
      putBack: (rule) => done(withPutBack(placed, rule)),
      allToRule: () => {
        job.edit(`heldByHand.${owner}.none`, (draft) => putPlaced(draft, of ?? owner, NONE));
        job.settle();
      },
      settle: () => job.settle(),
    };
  }, [view, entries, job]);
}

function putPlaced(draft: Draft<Job>, opening: string, placed: readonly HandPlaced[]): void {
  const rest = (draft.heldByHand ?? []).filter((one) => one.opening !== opening);
  const next = placed.length === 0 ? rest : [...rest, { opening, placed: [...placed] }];
  if (next.length === 0) delete draft.heldByHand;
  else draft.heldByHand = next as never;
}

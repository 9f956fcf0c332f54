import { useParams } from 'wouter';
import type { HoldPlan, Opening, OpeningPlan, PanelPlan, PatternMember, PatternPlan } from '../contract.ts';
import { useJob, usePlan } from '../job/work.ts';

/** The opening the page shows, and its part of the plan. */
export interface Current {
  readonly opening: Opening | undefined;
  readonly anyOpening: boolean;
  readonly plan: OpeningPlan | undefined;
  readonly pattern: PatternPlan | undefined;
  readonly member: PatternMember | undefined;
  readonly panel: PanelPlan | undefined;
  readonly hold: HoldPlan | undefined;
  /** True while an entry cannot be read, so that the drawing is of the last ones that could. */
  readonly stale: boolean;
}

export function useCurrent(): Current {
  const { opening: asked } = useParams<{ opening?: string }>();
  const openings = useJob((state) => state.document.openings);
  const stale = useJob((state) => Object.keys(state.refused).length > 0);
  const plans = usePlan((state) => state.openings);
  const plan = usePlan((state) => state.plan);
  const opening = openings.find((one) => one.id === asked) ?? openings[0];
  const pattern = plan?.patterns.find((one) => one.members.some((member) => member.opening === opening?.id));
  return {
    opening,
    anyOpening: openings.length > 0,
    plan: plans.find((one) => one.opening === opening?.id),
    pattern,
    member: pattern?.members.find((one) => one.opening === opening?.id),
    panel: plan?.panels.find((one) => one.pattern === pattern?.pattern),
    hold: plan?.hold.find((one) => one.pattern === pattern?.pattern),
    stale,
  };
}

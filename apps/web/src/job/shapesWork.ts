import { type Catalogue, deriveOpenings, deriveShapes, type Job, type Plan } from '../contract.ts';
import { received, type Sent, sharedParts, toSend } from './sharedParts.ts';

type Lists = Pick<Plan, 'openings' | 'patterns' | 'panels' | 'hold'>;

/** The stages up to the lay as they travel: of each list only what changed since the answer before. */
export interface SentShapes {
  readonly rest: Omit<Plan, keyof Lists>;
  readonly lists: { readonly [K in keyof Lists]: Sent<Lists[K][number]> };
  /** How many of the findings are of the survey; they come first. */
  readonly ofSurvey: number;
}

/** Works out the stages up to the lay, one job after another; what an edit leaves alone is not worked out again. */
export function shapesWork(): (job: Job, catalogue: Catalogue, seed: number) => SentShapes {
  let last: { readonly job: Job; readonly catalogue: Catalogue; readonly plan: Plan } | null = null;
  return (newJob, newCatalogue, seed) => {
    const job = sharedParts(last?.job, newJob);
    const catalogue = sharedParts(last?.catalogue, newCatalogue);
    const plan = sharedParts(last?.plan, deriveShapes(job, catalogue, seed));
    const { openings, patterns, panels, hold, ...rest } = plan;
    const sent = {
      rest,
      lists: {
        openings: toSend(last?.plan.openings ?? [], openings),
        patterns: toSend(last?.plan.patterns ?? [], patterns),
        panels: toSend(last?.plan.panels ?? [], panels),
        hold: toSend(last?.plan.hold ?? [], hold),
      },
      ofSurvey: deriveOpenings(job, catalogue).findings.length,
    };
    last = { job, catalogue, plan };
    return sent;
  };
}

/** The other end: the whole plan again, unchanged parts the same objects as before. */
export function shapesReceived(before: Plan | null, { rest, lists }: SentShapes): Plan {
  return {
    ...rest,
    openings: received(before?.openings ?? [], lists.openings),
    patterns: received(before?.patterns ?? [], lists.patterns),
    panels: received(before?.panels ?? [], lists.panels),
    hold: received(before?.hold ?? [], lists.hold),
  };
}

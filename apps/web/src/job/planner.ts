import { createStore, type StoreApi } from 'zustand';
import {
  type Catalogue,
  deriveOpenings,
  type Finding,
  type Job,
  type OpeningPlan,
  PLAN_SEED,
  type Plan,
} from '../contract.ts';
import { createLane, type Lane } from './lane.ts';
import { type SentShapes, shapesReceived } from './shapesWork.ts';

/** The stages that follow the lay, as last worked out. */
export type LateStages = Pick<Plan, 'cutting' | 'takeOff' | 'price' | 'findings'>;

export interface PlanState {
  /** The openings as surveyed, always of the job on the page. */
  readonly openings: readonly OpeningPlan[];
  /** What the survey says now, and the stages up to the lay as last worked out. */
  readonly findings: readonly Finding[];
  /** Everything before the lay as last worked out: a few frames behind the last key at most; null before the first. */
  readonly plan: Plan | null;
  readonly late: LateStages | null;
  /** True while `plan` or `late` is of an earlier job than the one on the page. */
  readonly working: boolean;
  /** A fault of ours, as its message. */
  readonly fault: string | null;
}

export interface WorkRequest {
  readonly ticket: number;
  readonly part: 'shapes' | 'whole';
  readonly job: Job;
  readonly catalogue: Catalogue;
  readonly seed: number;
}
export type WorkAnswer =
  | { readonly ticket: number; readonly shapes: SentShapes }
  | { readonly ticket: number; readonly plan: LateStages }
  | { readonly ticket: number; readonly fault: string };

/** The part of a Worker that is used here, so that a test can stand in for it. */
export interface PlanWorker {
  onmessage: ((event: { readonly data: WorkAnswer }) => void) | null;
  onerror: ((event: { readonly message: string }) => void) | null;
  postMessage(request: WorkRequest): void;
  terminate(): void;
}

/** The whole plan is begun when no key came for this long, ms: what is typed on would only be thrown away. */
const LULL = 250;
/** A lay that runs longer than this for a job no longer on the page is given up, ms; a fresh worker starts slowly. */
const PATIENCE = 2500;

export interface Planner {
  readonly store: StoreApi<PlanState>;
  readonly show: (job: Job, catalogue: Catalogue) => void;
  readonly stop: () => void;
}

const nothingYet: PlanState = {
  openings: [],
  findings: [],
  plan: null,
  late: null,
  working: false,
  fault: null,
};

/**
 * Draws the openings at once. Patterns, panels and hold points follow from one worker, the lay and what comes after it
 * from another, so that neither waits for the other. A newer job supersedes an older.
 *
 * @param whenDrawn calls back once the page has been drawn: the workers are not to hold up the first drawing
 */
export function createPlanner(
  newWorker: () => PlanWorker,
  whenDrawn: (then: () => void) => void = (then) => then(),
): Planner {
  const store = createStore<PlanState>(() => nothingYet);
  let ticket = 0;
  let shapesOf = 0;
  let lateOf = 0;
  let ofSurvey: readonly Finding[] = [];
  let beyondSurvey: readonly Finding[] = [];
  let lull: ReturnType<typeof setTimeout> | undefined;

  const findings = () => [...ofSurvey, ...beyondSurvey];
  const working = () => shapesOf !== ticket || lateOf !== ticket;
  const faulted = (answer: WorkAnswer): answer is Extract<WorkAnswer, { readonly fault: string }> => {
    if (!('fault' in answer)) return false;
    if (answer.ticket === ticket) store.setState({ working: false, fault: answer.fault });
    return true;
  };
  const shapes: Lane = createLane(newWorker, (answer) => {
    if (faulted(answer) || !('shapes' in answer)) return;
    shapesOf = answer.ticket;
    const plan = shapesReceived(store.getState().plan, answer.shapes);
    beyondSurvey = plan.findings.slice(answer.shapes.ofSurvey);
    store.setState({ plan, findings: findings(), working: working() });
  });
  const whole: Lane = createLane(
    newWorker,
    (answer) => {
      if (faulted(answer) || !('plan' in answer) || answer.ticket !== ticket) return;
      lateOf = answer.ticket;
      store.setState({ late: answer.plan, working: working() });
    },
    PATIENCE,
  );

  const show = (job: Job, catalogue: Catalogue) => {
    ticket += 1;
    const first = ticket === 1;
    const request = { ticket, job, catalogue, seed: PLAN_SEED };
    try {
      const surveyed = deriveOpenings(job, catalogue);
      ofSurvey = surveyed.findings;
      store.setState({ openings: surveyed.openings, findings: findings(), working: true, fault: null });
    } catch (fault) {
      console.error(fault);
      store.setState({ working: false, fault: fault instanceof Error ? fault.message : String(fault) });
      return;
    }
    clearTimeout(lull);
    const go = () => {
      shapes.ask({ ...request, part: 'shapes' });
      lull = setTimeout(() => whole.ask({ ...request, part: 'whole' }), first ? 0 : LULL);
    };
    if (first) whenDrawn(() => request.ticket === ticket && go());
    else go();
  };

  return {
    store,
    show,
    stop: () => {
      clearTimeout(lull);
      shapes.stop();
      whole.stop();
    },
  };
}

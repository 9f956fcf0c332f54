import { createStore, type StoreApi } from 'zustand';
import {
  type Catalogue,
  deriveOpenings,
  type Finding,
  type Job,
  type OpeningPlan,
  type PanelOfOne,
  PLAN_SEED,
  type Plan,
} from '../contract.ts';
import { createLane, type Lane } from './lane.ts';
import { type SentShapes, shapesReceived } from './shapesWork.ts';
import { withPanel } from './withPanel.ts';

/** The stages that follow the lay, as last worked out. */
export type LateStages = Pick<Plan, 'cutting' | 'takeOff' | 'price' | 'findings'>;

export interface PlanState {
  /** The openings as surveyed, always of the job on the page. */
  readonly openings: readonly OpeningPlan[];
  /** What the survey says now, and the stages up to the lay as last worked out. */
  readonly findings: readonly Finding[];
  /**
   * Everything before the lay as last worked out: a few frames behind the last key at most, the panel drawn large not at
   * all; null before the first.
   */
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
/** A panel that takes longer than this is left to the worker, ms: the page is not to stand still for it. */
const AT_ONCE = 50;
/** For so many edits, and then it is tried again: code that has just been loaded is slow at first only. */
const LEFT = 8;
/** A lay that runs longer than this for a job no longer on the page is given up, ms; a fresh worker starts slowly. */
const PATIENCE = 2500;

/** The panel that is drawn large, and how it is worked out: its stage brings that along. */
export interface DrawnPanel {
  readonly opening: string;
  readonly derive: (job: Job, catalogue: Catalogue, opening: string) => PanelOfOne | null;
}

export interface Planner {
  readonly store: StoreApi<PlanState>;
  readonly show: (job: Job, catalogue: Catalogue) => void;
  /** From now on this panel follows every key at once, in the page itself; null where none is drawn large. */
  readonly draw: (panel: DrawnPanel | null) => void;
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
  /** As it came from the worker, whose next answer counts on it. */
  let received: Plan | null = null;
  let drawn: DrawnPanel | null = null;
  let atOnce: { readonly ticket: number; readonly panel: PanelOfOne } | null = null;
  /** How many times in a row the panel took too long, and how many edits it is still left to the worker for. */
  let slow = 0;
  let left = 0;

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
    received = shapesReceived(received, answer.shapes);
    beyondSurvey = received.findings.slice(answer.shapes.ofSurvey);
    // A panel drawn since is newer than what the worker says of it.
    const plan = atOnce && atOnce.ticket > answer.ticket ? withPanel(received, atOnce.panel) : received;
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

  /** The plan with the panel drawn large as the job now has it, or as it was where that takes too long. */
  const withDrawn = (job: Job, catalogue: Catalogue): Plan | null => {
    const { plan } = store.getState();
    if (!plan || !drawn || left-- > 0) return plan;
    const since = performance.now();
    const panel = drawn.derive(job, catalogue, drawn.opening);
    slow = performance.now() - since > AT_ONCE ? slow + 1 : 0;
    left = slow > 1 ? LEFT : 0;
    if (!panel) return plan;
    atOnce = { ticket, panel };
    return withPanel(plan, panel);
  };

  const show = (job: Job, catalogue: Catalogue) => {
    ticket += 1;
    const first = ticket === 1;
    const request = { ticket, job, catalogue, seed: PLAN_SEED };
    try {
      const surveyed = deriveOpenings(job, catalogue);
      ofSurvey = surveyed.findings;
      const plan = withDrawn(job, catalogue);
      store.setState({ openings: surveyed.openings, plan, findings: findings(), working: true, fault: null });
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
    draw: (panel) => {
      drawn = panel;
      slow = 0;
      left = 0;
    },
    stop: () => {
      clearTimeout(lull);
      shapes.stop();
      whole.stop();
    },
  };
}

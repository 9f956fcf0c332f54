import {
  exchange,
  type Instance,
  type InstanceRefusal,
  type Layout,
  type SearcherCall,
  type SearcherReport,
  seedOf,
} from '@panewright/packing';
import { ok, type Result, refuse } from '@panewright/quantity';
import { type PackBudget, type PackReport, reportOf } from './packing.ts';
import type { Refusal } from './refusal.ts';

/** A search somewhere else: in a thread of its own, or in this one. */
export type RemoteSearcher = (call: SearcherCall) => Promise<Result<SearcherReport, InstanceRefusal>>;

/** Rounds a search of several is cut into, at least, and their longest stride. */
const ROUNDS = 50;
const LONGEST_STRIDE = 4_000_000;

/**
 * Lays the pieces of an instance by several searches side by side, each from a seed of its own, that tell one another
 * the shortest lay now and then. Rounds are counted in evaluations: same seed, same searches and same evaluations,
 * same lay, however fast each runs. A budget in evaluations is that of each search.
 */
export async function packTogether(
  { name, instance }: { readonly name: string; readonly instance: Instance },
  seed: number,
  budget: PackBudget,
  searchers: readonly RemoteSearcher[],
  onBetter: (best: Layout) => void = () => {},
): Promise<Result<PackReport, Refusal>> {
  const { plan, whole } = budget;
  const begun = await askAll(
    searchers,
    searchers.map((_, k) => ({ kind: 'begin', instance, seed: seedOf(seed, k), plan })),
  );
  if (!begun.ok) return begun;
  let reports = begun.value;
  const found = new Improvements(onBetter);
  let spent = spentBy(budget, reports);
  found.note(reports, spent);
  let lays: readonly (Layout | undefined)[] = [];
  while (spent < whole && !reports.some(({ done }) => done)) {
    const round = nextRound(budget, spent, mostEvaluations(reports));
    const answered = await askAll(
      searchers,
      searchers.map((_, k) => {
        const lay = lays[k];
        return lay ? { kind: 'go on', ...round, lay } : { kind: 'go on', ...round };
      }),
    );
    if (!answered.ok) return answered;
    reports = answered.value;
    const before = spent;
    spent = spentBy(budget, reports);
    found.note(reports, spent);
    lays = exchange(reports, before / whole, spent / whole);
  }
  return ok(reportOf(name, found.best!, found.list));
}

async function askAll(
  searchers: readonly RemoteSearcher[],
  calls: readonly SearcherCall[],
): Promise<Result<readonly SearcherReport[], Refusal>> {
  const answers = await Promise.all(searchers.map((search, k) => search(calls[k]!)));
  const reports: SearcherReport[] = [];
  for (const answer of answers) {
    if (!answer.ok) return refuse({ code: 'PACK_REFUSED', refusal: answer.refusal });
    reports.push(answer.value);
  }
  return ok(reports);
}

const mostEvaluations = (reports: readonly SearcherReport[]) =>
  Math.max(...reports.map(({ evaluations }) => evaluations));

const spentBy = (budget: PackBudget, reports: readonly SearcherReport[]) =>
  budget.spent(mostEvaluations(reports));

/** The shortest lay so far, and when each shorter one came. */
class Improvements {
  best: Layout | undefined;
  readonly list: PackReport['improvements'] = [];

  constructor(private readonly onBetter: (best: Layout) => void) {}

  note(reports: readonly SearcherReport[], at: number): void {
    const before = this.best;
    for (const { best } of reports)
      if (this.best === undefined || best.length < this.best.length) this.best = best;
    if (this.best === before || this.best === undefined) return;
    const { length, density } = this.best;
    this.list.push({ at, length, density: 100 * density });
    this.onBetter(this.best);
  }
}

/** By the clock the plan follows the rate met, and the last round ends with the time. */
function nextRound(budget: PackBudget, spent: number, done: number) {
  if (budget.unit === 'evaluations')
    return {
      evaluations: Math.min(Math.ceil(budget.whole / ROUNDS), budget.whole - spent),
      plan: budget.plan,
    };
  if (done === 0 || spent <= 0) return { evaluations: budget.stride, plan: budget.plan };
  const rate = done / spent;
  const stride = Math.min(LONGEST_STRIDE, (rate * budget.whole) / ROUNDS, rate * (budget.whole - spent));
  return { evaluations: Math.max(1000, Math.ceil(stride)), plan: Math.ceil(rate * budget.whole) };
}

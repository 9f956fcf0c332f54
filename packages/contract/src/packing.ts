import {
  benchmarkInstance,
  exchange,
  type Instance,
  type InstanceRefusal,
  type Layout,
  type PackingState,
  type SearcherCall,
  type SearcherReport,
  seedOf,
  startPacking,
  step,
} from '@panewright/packing';
import { ok, type Result, refuse } from '@panewright/quantity';
import { z } from 'zod';
import { scan } from './document/scan.ts';
import { issuesOf } from './document/zodIssues.ts';
import type { Refusal } from './refusal.ts';

/** Far beyond any cloth, far within what a number can tell exactly. */
const coordinate = z.number().min(-1e9).max(1e9);
const vertex = z.tuple([coordinate, coordinate]);

/** Pieces to lay on a strip, in the plain JSON the open benchmarks are kept in; lengths in the instance's own unit. */
export const packInstance = z.looseObject({
  name: z.string().max(200),
  stripWidth: z.number(),
  pieces: z
    .array(
      z.looseObject({
        id: z.union([z.int(), z.string().max(200)]),
        demand: z.int().max(10_000),
        allowedRotationsDeg: z.array(z.number()).max(3600),
        polygon: z.array(vertex).max(20_000),
      }),
    )
    .max(5000),
});

export const packReport = z.strictObject({
  name: z.string(),
  length: z.number(),
  density: z.number().describe('piece area over strip width times length, percent'),
  placements: z.array(
    z.strictObject({
      pieceId: z.union([z.int(), z.string()]),
      rotationDeg: z.number(),
      flipped: z.boolean(),
      x: z.number(),
      y: z.number(),
    }),
  ),
  improvements: z.array(z.strictObject({ at: z.number(), length: z.number(), density: z.number() })),
});
export type PackReport = z.output<typeof packReport>;

/** How long a search goes on. `spent` tells how far it is, in the unit of `whole`: seconds or evaluations. */
export interface PackBudget {
  readonly unit: 'seconds' | 'evaluations';
  readonly whole: number;
  readonly spent: (evaluations: number) => number;
  /** Evaluations to plan for, and to do between two looks at what is spent. */
  readonly plan: number;
  readonly stride: number;
}

/** Evaluations one core does in a second, roughly: only to tell the search how long it will have. */
const A_SECOND = 2_000_000;

export const forEvaluations = (evaluations: number): PackBudget => ({
  unit: 'evaluations',
  whole: evaluations,
  spent: (done) => done,
  plan: evaluations,
  stride: evaluations,
});

export const forSeconds = (seconds: number, clock: () => number): PackBudget => {
  const start = clock();
  return {
    unit: 'seconds',
    whole: seconds,
    spent: () => clock() - start,
    plan: seconds * A_SECOND,
    stride: 100_000,
  };
};

/** A foreign value as an instance, or why not. */
export function readInstance(
  value: unknown,
): Result<{ readonly name: string; readonly instance: Instance }, Refusal> {
  const invalid = scan(value);
  if (invalid) return refuse({ code: 'INPUT_INVALID', operation: 'pack', issues: [invalid] });
  const parsed = packInstance.safeParse(value);
  if (!parsed.success)
    return refuse({ code: 'INPUT_INVALID', operation: 'pack', issues: issuesOf(parsed.error, value) });
  return ok({ name: parsed.data.name, instance: benchmarkInstance(parsed.data) });
}

/**
 * Lays the pieces of an instance and betters the lay until the budget is spent or the lay meets the bound. Same seed
 * and same evaluations, same lay; with a budget in seconds the machine decides how far it comes.
 */
export function pack(
  { name, instance }: { readonly name: string; readonly instance: Instance },
  seed: number,
  budget: PackBudget,
  onBetter: (state: PackingState) => void = () => {},
): Result<PackReport, Refusal> {
  const started = startPacking(instance, seed, budget.plan);
  if (!started.ok) return refuse({ code: 'PACK_REFUSED', refusal: started.refusal });
  let state = started.value;
  const improvements: PackReport['improvements'] = [];
  const note = () => {
    const { length, density } = state.best;
    improvements.push({ at: budget.spent(state.evaluations), length, density: 100 * density });
    onBetter(state);
  };
  note();
  while (!state.done && budget.spent(state.evaluations) < budget.whole) {
    const before = state.best.length;
    state = step(state, budget.stride);
    if (state.best.length < before) note();
  }
  return ok(reportOf(name, state.best, improvements));
}

function reportOf(
  name: string,
  { length, density, placements }: Layout,
  improvements: PackReport['improvements'],
): PackReport {
  return {
    name,
    length,
    density: 100 * density,
    placements: placements.map(({ pieceId, rotationDeg, flipped, x, y }) => ({
      pieceId,
      rotationDeg,
      flipped,
      x,
      y,
    })),
    improvements,
  };
}

/** A search somewhere else: in a thread of its own, or in this one. */
export type RemoteSearcher = (call: SearcherCall) => Promise<Result<SearcherReport, InstanceRefusal>>;

/** Rounds a search of several is cut into, at least, and their longest stride. */
const ROUNDS = 50;
const LONGEST_STRIDE = 4_000_000;

/**
 * The same by several searches side by side, each from a seed of its own, that tell one another the shortest lay now
 * and then. Rounds are counted in evaluations: same seed, same searches and same evaluations, same lay, however fast
 * each runs. A budget in evaluations is that of each search.
 */
export async function packTogether(
  { name, instance }: { readonly name: string; readonly instance: Instance },
  seed: number,
  budget: PackBudget,
  searchers: readonly RemoteSearcher[],
  onBetter: (best: Layout) => void = () => {},
): Promise<Result<PackReport, Refusal>> {
  const improvements: PackReport['improvements'] = [];
  let reports: readonly SearcherReport[] = [];
  let best: Layout | undefined;
  const ask = async (calls: readonly SearcherCall[]): Promise<Refusal | undefined> => {
    const answers = await Promise.all(searchers.map((search, k) => search(calls[k]!)));
    const refused = answers.find((answer) => !answer.ok);
    if (refused && !refused.ok) return { code: 'PACK_REFUSED', refusal: refused.refusal };
    reports = answers.flatMap((answer) => (answer.ok ? [answer.value] : []));
    for (const { best: found } of reports) if (best === undefined || found.length < best.length) best = found;
    return undefined;
  };
  const note = () => {
    const { length, density } = best!;
    if (improvements.length > 0 && improvements.at(-1)!.length <= length) return;
    improvements.push({ at: spent(), length, density: 100 * density });
    onBetter(best!);
  };
  const spent = () => budget.spent(Math.max(...reports.map(({ evaluations }) => evaluations)));
  const { plan } = budget;
  const refusal = await ask(
    searchers.map((_, k) => ({ kind: 'begin', instance, seed: seedOf(seed, k), plan })),
  );
  if (refusal) return refuse(refusal);
  note();
  let lays: readonly (Layout | undefined)[] = [];
  for (let from = spent(); from < budget.whole && !reports.some(({ done }) => done); ) {
    const round = nextRound(budget, from, Math.max(...reports.map(({ evaluations }) => evaluations)));
    await ask(
      searchers.map((_, k) => {
        const lay = lays[k];
        return lay ? { kind: 'go on', ...round, lay } : { kind: 'go on', ...round };
      }),
    );
    const to = spent();
    note();
    lays = exchange(reports, from / budget.whole, to / budget.whole);
    from = to;
  }
  return ok(reportOf(name, best!, improvements));
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

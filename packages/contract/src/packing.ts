import {
  benchmarkInstance,
  type Instance,
  type Layout,
  type PackingState,
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
        allowedRotationsDeg: z
          .union([z.array(z.number()).max(3600), z.literal('any')])
          .describe('anticlockwise turns a piece may lie in, or "any" for cloth without a grain'),
        polygon: z.array(vertex).max(20_000),
      }),
    )
    .max(5000),
  reserved: z
    .array(z.tuple([coordinate, coordinate, coordinate, coordinate]))
    .max(200)
    .optional()
    .describe('where no piece may lie: least x and y, greatest x and y of each'),
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

/** What a search found, as every door tells it. */
export function reportOf(
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

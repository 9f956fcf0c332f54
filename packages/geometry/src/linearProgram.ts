/** `a · x ≤ b`. */
export interface Constraint {
  readonly a: readonly number[];
  readonly b: number;
}

const SLACK = 1e-12;

/**
 * The x that makes `cost · x` least under constraints and within bounds; undefined when there is none.
 *
 * Seidel's incremental method: constraints are taken one by one; when the best point so far breaks the next one, the
 * new best lies on it, which is a problem of one dimension less. Fast for the few dimensions met here; the order of the
 * constraints should be mixed.
 *
 * @source sources.md#seidel-1991
 */
export function leastCost(
  constraints: readonly Constraint[],
  cost: readonly number[],
  low: readonly number[],
  high: readonly number[],
): number[] | undefined {
  if (cost.length === 1) return onLine(constraints, cost[0]!, low[0]!, high[0]!);
  let best = cost.map((c, k) =>
    c > 0 ? low[k]! : c < 0 ? high[k]! : Math.min(Math.max(0, low[k]!), high[k]!),
  );
  for (let i = 0; i < constraints.length; i++) {
    const { a, b } = constraints[i]!;
    if (dot(a, best) <= b + SLACK * (1 + Math.abs(b))) continue;
    const found = onConstraint(constraints.slice(0, i), constraints[i]!, cost, low, high);
    if (!found) return undefined;
    best = found;
  }
  return best;
}

/** The least cost with one constraint met exactly: it gives the variable in which it is steepest. */
function onConstraint(
  earlier: readonly Constraint[],
  { a, b }: Constraint,
  cost: readonly number[],
  low: readonly number[],
  high: readonly number[],
): number[] | undefined {
  let k = 0;
  for (let j = 1; j < a.length; j++) if (Math.abs(a[j]!) > Math.abs(a[k]!)) k = j;
  const pivot = a[k]!;
  if (Math.abs(pivot) < 1e-14) return undefined;
  const without = (v: readonly number[]) => v.filter((_, j) => j !== k);
  // x_k = (b - Σ a_j x_j) / a_k, put into a constraint c · x ≤ d.
  const reduced = ({ a: c, b: d }: Constraint): Constraint => {
    const share = c[k]! / pivot;
    return { a: without(c.map((cj, j) => cj - share * a[j]!)), b: d - share * b };
  };
  const unit = a.map((_, j) => (j === k ? 1 : 0));
  const limits = [
    { a: unit, b: high[k]! },
    { a: unit.map((u) => -u), b: -low[k]! },
  ];
  const price = cost[k]! / pivot;
  const found = leastCost(
    [...limits, ...earlier].map(reduced),
    without(cost.map((c, j) => c - price * a[j]!)),
    without(low),
    without(high),
  );
  if (!found) return undefined;
  const rest = without(a);
  const x = (b - dot(rest, found)) / pivot;
  return [...found.slice(0, k), x, ...found.slice(k)];
}

function onLine(constraints: readonly Constraint[], cost: number, low: number, high: number) {
  let [from, to] = [low, high];
  for (const { a, b } of constraints) {
    const c = a[0]!;
    if (c > 1e-14) to = Math.min(to, b / c);
    else if (c < -1e-14) from = Math.max(from, b / c);
    else if (b < -1e-7) return undefined;
  }
  if (from > to + 1e-7 * (1 + Math.abs(to))) return undefined;
  if (cost > 0) return [from];
  return cost < 0 ? [to] : [Math.min(Math.max(0, from), to)];
}

function dot(a: readonly number[], x: readonly number[]): number {
  let sum = 0;
  for (let j = 0; j < a.length; j++) sum += a[j]! * x[j]!;
  return sum;
}

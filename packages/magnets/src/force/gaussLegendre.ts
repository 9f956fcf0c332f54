/**
 * Gauss-Legendre rules on [0, pi] seen through t = -cos(theta): `cosine[i]` is cos(theta_i) and
 * `weight[i]` is d(-cos(theta)) there, so the integral of f over [c-h, c+h] is h * sum weight * f(c - h cosine).
 * The substitution removes half-power kinks at both ends and packs nodes there.
 */
export interface CosineRule {
  readonly cosine: Float64Array;
  readonly weight: Float64Array;
}

/** Nodes and weights on [-1, 1]. */
export interface LegendreRule {
  readonly node: Float64Array;
  readonly weight: Float64Array;
}

const legendreRules = new Map<number, LegendreRule>();
const cosineRules = new Map<number, CosineRule>();

/** The n-point rule on [-1, 1], kept once computed. Source: Newton on P_n, sources.md#dlmf-3-5. */
export function legendreRule(n: number): LegendreRule {
  const kept = legendreRules.get(n);
  if (kept) return kept;
  const node = new Float64Array(n);
  const weight = new Float64Array(n);
  for (let i = 0; i < n; i++) {
    let x = -Math.cos((Math.PI * (i + 0.75)) / (n + 0.5));
    let slope = 1;
    for (let pass = 0; pass < 8; pass++) {
      let below = 1;
      let value = x;
      for (let k = 2; k <= n; k++) {
        const next = ((2 * k - 1) * x * value - (k - 1) * below) / k;
        below = value;
        value = next;
      }
      if (n === 1) below = 1;
      slope = (n * (x * value - below)) / (x * x - 1);
      const step = value / slope;
      x -= step;
      if (Math.abs(step) < 1e-16) break;
    }
    node[i] = x;
    weight[i] = 2 / ((1 - x * x) * slope * slope);
  }
  const rule = { node, weight };
  legendreRules.set(n, rule);
  return rule;
}

/** The n-point rule through the cosine, kept once computed. */
export function cosineRule(n: number): CosineRule {
  const kept = cosineRules.get(n);
  if (kept) return kept;
  const { node, weight } = legendreRule(n);
  const rule = { cosine: new Float64Array(n), weight: new Float64Array(n) };
  for (let i = 0; i < n; i++) {
    const theta = (Math.PI / 2) * (1 + node[i]!);
    rule.cosine[i] = Math.cos(theta);
    rule.weight[i] = (Math.PI / 2) * weight[i]! * Math.sin(theta);
  }
  cosineRules.set(n, rule);
  return rule;
}

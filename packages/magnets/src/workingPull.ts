import {
  type Celsius,
  type Millimetre,
  mm,
  type Newton,
  newton,
  ok,
  type Result,
  refuse,
  type Tesla,
} from '@panewright/quantity';
import type { Magnet } from './magnet.ts';
import { effectiveRemanence, RECOIL_PERMEABILITY } from './material/recoil.ts';
import { remanenceAt } from './material/temperature.ts';
import { type PairRefusal, pairForce } from './pairForce.ts';

/** Half-widths that hold 95 times in 100, taken as normal. */
export interface PairTolerances {
  /** Of the remanence, a true ratio. */
  readonly remanence: number;
  /** Of each magnet's thickness. */
  readonly thickness: Millimetre;
  /** Of the stack between the magnets: glass, cloth and tape together. */
  readonly gap: Millimetre;
  /** Of one coating layer. */
  readonly coating: Millimetre;
  /** Of b's place against a's, along x and along y each. */
  readonly misalignment: Millimetre;
}

/** A real pair: sizes outside the plating, remanence at 20 C, `gap` from plated surface to plated surface. */
export interface WorkingPair {
  readonly a: Magnet;
  readonly b: Magnet;
  readonly remanenceA: Tesla;
  readonly remanenceB: Tesla;
  readonly gap: Millimetre;
  /** One layer of plating. */
  readonly coating: Millimetre;
  readonly temperature: Celsius;
  readonly tolerances: PairTolerances;
  /** Both from one batch: their remanence and thickness err together, which widens the interval. */
  readonly sameBatch: boolean;
}

export type PullSource = 'remanence' | 'thickness' | 'gap' | 'coating' | 'misalignment';

export interface WorkingPull {
  /** With every figure at its nominal value. */
  readonly nominal: Newton;
  /** Holds 95 times in 100 if the tolerances do. An estimate: friction, tilt and damage are not in it. */
  readonly low: Newton;
  readonly high: Newton;
  /** Half-width each source would give alone, as a share of the pull, largest first. */
  readonly sources: readonly { readonly source: PullSource; readonly share: number }[];
}

export type WorkingPullRefusal =
  | PairRefusal
  | { readonly code: 'TOLERANCE_NEGATIVE'; readonly source: PullSource; readonly value: number }
  | { readonly code: 'COATING_NEGATIVE'; readonly coating: Millimetre }
  | {
      readonly code: 'TEMPERATURE_OUT_OF_RANGE';
      readonly temperature: Celsius;
      readonly least: Celsius;
      readonly most: Celsius;
    }
  | { readonly code: 'PAIR_REPELS'; readonly pull: Newton };

/** What a shop that measures its glass may count on (estimates; sources.md#magnets-error-budget). */
export const USUAL_TOLERANCES: PairTolerances = {
  remanence: 0.015,
  thickness: mm(0.1),
  gap: mm(0.28),
  coating: mm(0.015),
  misalignment: mm(1),
};

/** One layer of nickel plating, typical (estimate; measured mean 27 um in one paper). */
export const USUAL_COATING = mm(0.03);

const COLDEST = -40 as Celsius;
const HOTTEST = 150 as Celsius;
/** Normal half-width that holds 95 in 100. */
const NINETY_FIVE = 1.959964;

interface Deviation {
  readonly remanenceA: number;
  readonly remanenceB: number;
  readonly thicknessA: number;
  readonly thicknessB: number;
  readonly gap: number;
  readonly coating: number;
  readonly dx: number;
  readonly dy: number;
}

const NONE: Deviation = {
  remanenceA: 0,
  remanenceB: 0,
  thicknessA: 0,
  thicknessB: 0,
  gap: 0,
  coating: 0,
  dx: 0,
  dy: 0,
};

/** The magnetic body inside its plating. */
function body(magnet: Magnet, coating: number, thicker: number): Magnet {
  const thickness = mm(magnet.thickness + thicker - 2 * coating);
  if (magnet.kind === 'disc') return { kind: 'disc', diameter: mm(magnet.diameter - 2 * coating), thickness };
  return {
    kind: 'block',
    width: mm(magnet.width - 2 * coating),
    height: mm(magnet.height - 2 * coating),
    thickness,
  };
}

/** Pull of one pair as it was really made: every figure off its nominal by the deviation given. */
function pullOf(pair: WorkingPair, off: Deviation): Result<number, PairRefusal> {
  const coating = pair.coating + off.coating;
  const a = body(pair.a, coating, off.thicknessA);
  const b = body(pair.b, coating, off.thicknessB);
  const polarisation = (magnet: Magnet, remanence: Tesla, share: number) =>
    (effectiveRemanence(magnet, remanenceAt(remanence, pair.temperature), RECOIL_PERMEABILITY) *
      (1 + share)) as Tesla;
  const force = pairForce({
    a,
    b,
    remanenceA: polarisation(a, pair.remanenceA, off.remanenceA),
    remanenceB: polarisation(b, pair.remanenceB, off.remanenceB),
    gap: mm(pair.gap + off.gap + 2 * coating),
    offset: { dx: mm(off.dx), dy: mm(off.dy) },
  });
  return force.ok ? ok(0 - force.value.z) : force;
}

/** The independent things that vary, one standard deviation each; misalignment is not among them. */
function variations(pair: WorkingPair): { source: PullSource; by: Partial<Deviation> }[] {
  const { remanence, thickness, gap, coating } = pair.tolerances;
  const [j, t, g, c] = [remanence, thickness, gap, coating].map((h) => h / NINETY_FIVE) as [
    number,
    number,
    number,
    number,
  ];
  const magnets: { source: PullSource; by: Partial<Deviation> }[] = pair.sameBatch
    ? [
        { source: 'remanence', by: { remanenceA: j, remanenceB: j } },
        { source: 'thickness', by: { thicknessA: t, thicknessB: t } },
      ]
    : [
        { source: 'remanence', by: { remanenceA: j } },
        { source: 'remanence', by: { remanenceB: j } },
        { source: 'thickness', by: { thicknessA: t } },
        { source: 'thickness', by: { thicknessB: t } },
      ];
  return [...magnets, { source: 'gap', by: { gap: g } }, { source: 'coating', by: { coating: c } }];
}

function check(pair: WorkingPair): WorkingPullRefusal | undefined {
  for (const [source, value] of Object.entries(pair.tolerances) as [PullSource, number][]) {
    if (!(value >= 0 && Number.isFinite(value))) return { code: 'TOLERANCE_NEGATIVE', source, value };
  }
  if (!(pair.coating >= 0)) return { code: 'COATING_NEGATIVE', coating: pair.coating };
  const { temperature } = pair;
  if (!(temperature >= COLDEST && temperature <= HOTTEST)) {
    return { code: 'TEMPERATURE_OUT_OF_RANGE', temperature, least: COLDEST, most: HOTTEST };
  }
  return undefined;
}

/** First and second differences of ln(pull) for one standard deviation of one variation. */
function slopes(
  pair: WorkingPair,
  by: Partial<Deviation>,
  centre: number,
): Result<[number, number], WorkingPullRefusal> {
  const logs: number[] = [];
  for (const side of [1, -1]) {
    const off = { ...NONE };
    for (const key of Object.keys(by) as (keyof Deviation)[]) off[key] = side * by[key]!;
    const found = pullOf(pair, off);
    if (!found.ok) return found;
    if (!(found.value > 0)) return refuse({ code: 'PAIR_REPELS', pull: newton(found.value) });
    logs.push(Math.log(found.value));
  }
  return ok([(logs[0]! - logs[1]!) / 2, logs[0]! - 2 * centre + logs[1]!]);
}

/** Strata of the distance off centre, finer far out, and of its direction within a quarter turn. */
const DISTANCES = 32;
const DIRECTIONS = 4;

interface Stratum {
  readonly log: number;
  readonly weight: number;
}

/** ln(pull) over the misalignments that may happen, which are too bent for a tangent. */
function misaligned(pair: WorkingPair, centre: number): Result<Stratum[], WorkingPullRefusal> {
  const deviation = pair.tolerances.misalignment / NINETY_FIVE;
  if (deviation === 0) return ok([{ log: centre, weight: 1 }]);
  const round = pair.a.kind === 'disc' && pair.b.kind === 'disc';
  const directions = round ? 1 : DIRECTIONS;
  const strata: Stratum[] = [];
  for (let i = 0; i < DISTANCES; i++) {
    const nearer = (i / DISTANCES) ** 1.5;
    const weight = ((i + 1) / DISTANCES) ** 1.5 - nearer;
    const distance = deviation * Math.sqrt(-2 * Math.log(nearer + weight / 2));
    for (let k = 0; k < directions; k++) {
      const angle = (Math.PI / 2) * ((k + 0.5) / directions);
      const off = { ...NONE, dx: distance * Math.cos(angle), dy: distance * Math.sin(angle) };
      const found = pullOf(pair, off);
      if (!found.ok) return found;
      if (!(found.value > 0)) return refuse({ code: 'PAIR_REPELS', pull: newton(found.value) });
      strata.push({ log: Math.log(found.value), weight: weight / directions });
    }
  }
  return ok(strata);
}

/** Standard normal distribution, error under 1e-7. Source: sources.md#abramowitz-stegun, 26.2.17. */
function normalBelow(z: number): number {
  const t = 1 / (1 + 0.2316419 * Math.abs(z));
  const series =
    t * (0.31938153 + t * (-0.356563782 + t * (1.781477937 + t * (-1.821255978 + t * 1.330274429))));
  const tail = (Math.exp(-0.5 * z * z) / Math.sqrt(2 * Math.PI)) * series;
  return z < 0 ? tail : 1 - tail;
}

/** Value below which a share of a mixture of equal normals lies, by halving. */
function quantile(strata: readonly Stratum[], deviation: number, share: number): number {
  const spread = Math.max(deviation, 1e-12);
  let low = Math.min(...strata.map(({ log }) => log)) - 6 * spread;
  let high = Math.max(...strata.map(({ log }) => log)) + 6 * spread;
  for (let pass = 0; pass < 40; pass++) {
    const middle = 0.5 * (low + high);
    let below = 0;
    for (const { log, weight } of strata) below += weight * normalBelow((middle - log) / spread);
    if (below < share) low = middle;
    else high = middle;
  }
  return 0.5 * (low + high);
}

/** Half-width misalignment would give alone, by the variance of its strata. */
function misalignmentShare(strata: readonly Stratum[]): number {
  const mean = strata.reduce((sum, { log, weight }) => sum + weight * log, 0);
  return (
    NINETY_FIVE * Math.sqrt(strata.reduce((sum, { log, weight }) => sum + weight * (log - mean) ** 2, 0))
  );
}

/**
 * Pull of a real pair with an interval. Remanence, thickness, gap and coating vary as stated and are carried
 * through ln(pull) by their slopes; misalignment, which only ever bends the pull, by strata of its distribution.
 * Recoil permeability and temperature are corrected for, not spread.
 *
 * @returns newtons: nominal, and an interval that holds 95 times in 100 where the tolerances do
 * @range tolerances small against the magnet; magnets below their lasting-loss limit
 * @accuracy coverage 95 +- 1.5 % against seeded simulation of the same model; published measurements of single
 *   pairs lie 0 to 15 % under theory, so test one pair (an estimate)
 * @refuses as pairForce, TOLERANCE_NEGATIVE, COATING_NEGATIVE, TEMPERATURE_OUT_OF_RANGE, PAIR_REPELS
 * @source sources.md#magnets-error-budget, #gum-2008, #magnets-recoil
 */
export function workingPull(pair: WorkingPair): Result<WorkingPull, WorkingPullRefusal> {
  const refusal = check(pair);
  if (refusal) return refuse(refusal);
  const nominal = pullOf(pair, NONE);
  if (!nominal.ok) return nominal;
  if (!(nominal.value > 0)) return refuse({ code: 'PAIR_REPELS', pull: newton(nominal.value) });
  const centre = Math.log(nominal.value);
  const strata = misaligned(pair, centre);
  if (!strata.ok) return strata;
  let shift = 0;
  let variance = 0;
  const shares = new Map<PullSource, number>();
  for (const { source, by } of variations(pair)) {
    const found = slopes(pair, by, centre);
    if (!found.ok) return found;
    const [slope, bend] = found.value;
    const own = slope * slope + (bend * bend) / 2;
    shift += bend / 2;
    variance += own;
    shares.set(source, (shares.get(source) ?? 0) + own);
  }
  const deviation = Math.sqrt(variance);
  const sources = [...shares].map(([source, own]) => ({ source, share: NINETY_FIVE * Math.sqrt(own) }));
  sources.push({ source: 'misalignment', share: misalignmentShare(strata.value) });
  return ok({
    nominal: newton(nominal.value),
    low: newton(Math.exp(shift + quantile(strata.value, deviation, 0.025))),
    high: newton(Math.exp(shift + quantile(strata.value, deviation, 0.975))),
    sources: sources.sort((p, q) => q.share - p.share),
  });
}

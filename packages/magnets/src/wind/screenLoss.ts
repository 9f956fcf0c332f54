import { ok, type Result, refuse } from '@panewright/quantity';

export type LossRefusal =
  | {
      readonly code: 'OPENNESS_OUT_OF_RANGE';
      readonly openFraction: number;
      readonly least: number;
      readonly most: number;
    }
  | {
      readonly code: 'REYNOLDS_OUT_OF_RANGE';
      readonly reynolds: number;
      readonly least: number;
      readonly most: number;
    }
  | { readonly code: 'INCIDENCE_OUT_OF_RANGE'; readonly degrees: number; readonly most: number };

const LEAST_OPEN = 0.05;
const MOST_OPEN = 0.8;

/** Blevins' factor by Reynolds number; constant from 400. */
const BLEVINS = [
  [20, 1.3],
  [30, 1.1],
  [40, 0.95],
  [60, 0.83],
  [80, 0.75],
  [100, 0.7],
  [200, 0.6],
  [400, 0.52],
] as const;

function checkOpenness(openFraction: number): LossRefusal | undefined {
  if (openFraction >= LEAST_OPEN && openFraction <= MOST_OPEN) return undefined;
  return { code: 'OPENNESS_OUT_OF_RANGE', openFraction, least: LEAST_OPEN, most: MOST_OPEN };
}

function blevinsFactor(reynolds: number): number {
  if (reynolds >= 400) return 0.52;
  const above = BLEVINS.findIndex(([re]) => re >= reynolds);
  if (above === 0) return BLEVINS[0][1];
  const [low, factorLow] = BLEVINS[above - 1]!;
  const [high, factorHigh] = BLEVINS[above]!;
  return factorLow + ((reynolds - low) / (high - low)) * (factorHigh - factorLow);
}

const blockage = (open: number) => (1 - open * open) / (open * open);

/**
 * Loss coefficient of a woven round-wire screen, dp = K rho v^2 / 2, v the approach speed.
 *
 * @param openFraction open area over all, 0.05 to 0.8
 * @param reynolds from 20, on the length the handbook calls D; authors differ on which that is
 * @param degrees between the flow and the screen's normal, 0 to 45
 * @returns K, a true ratio
 * @accuracy the handbook's; other formulas and measurements differ by 30 % and more, so show screenLossRange
 * @refuses OPENNESS_OUT_OF_RANGE, REYNOLDS_OUT_OF_RANGE, INCIDENCE_OUT_OF_RANGE
 * @source sources.md#blevins-1984
 */
export function screenLoss(openFraction: number, reynolds: number, degrees = 0): Result<number, LossRefusal> {
  const bad = checkOpenness(openFraction);
  if (bad) return refuse(bad);
  if (!(reynolds >= 20 && Number.isFinite(reynolds))) {
    return refuse({ code: 'REYNOLDS_OUT_OF_RANGE', reynolds, least: 20, most: Number.MAX_VALUE });
  }
  if (!(degrees >= 0 && degrees <= 45)) return refuse({ code: 'INCIDENCE_OUT_OF_RANGE', degrees, most: 45 });
  const lean = Math.cos((degrees * Math.PI) / 180) ** 2;
  return ok(blevinsFactor(reynolds) * blockage(openFraction) * lean);
}

/** Brundrett's formula, Reynolds number on the wire. Recalled; source: sources.md#brundrett-1993. */
function brundrett(open: number, reynolds: number): number {
  const factor = 7.125 / reynolds + 0.88 / Math.log10(reynolds + 1.25) + 0.055 * Math.log10(reynolds);
  return factor * blockage(open);
}

/** Idelchik's formula for round wires, Reynolds number past 1000. Recalled; source: sources.md#idelchik. */
const idelchik = (open: number) => 1.3 * (1 - open) + (1 / open - 1) ** 2;

export interface LossRange {
  readonly low: number;
  readonly high: number;
}

/**
 * Range of loss coefficients three handbooks give for one open fraction, Reynolds number 100 to 400. Openness
 * alone does not fix K: two measured nets one point apart differ 2.5 times.
 *
 * @returns low and high K, true ratios
 * @range open fraction 0.05 to 0.8
 * @accuracy the spread of formulas, +-30 % at 5 % open; an estimate, not a bound
 * @refuses OPENNESS_OUT_OF_RANGE
 * @source sources.md#blevins-1984, #brundrett-1993, #idelchik
 */
export function screenLossRange(openFraction: number): Result<LossRange, LossRefusal> {
  const bad = checkOpenness(openFraction);
  if (bad) return refuse(bad);
  const all = [
    blevinsFactor(100) * blockage(openFraction),
    blevinsFactor(400) * blockage(openFraction),
    brundrett(openFraction, 100),
    brundrett(openFraction, 400),
    idelchik(openFraction),
  ];
  return ok({ low: Math.min(...all), high: Math.max(...all) });
}

/**
 * Discharge coefficient of a screen whose loss coefficient is known, Cd = K^-1/2, as wind-tunnel papers print it.
 *
 * @returns a true ratio
 * @range K > 0; otherwise it faults
 * @accuracy exact
 * @source sources.md#lopez-2016
 */
export function dischargeCoefficient(loss: number): number {
  if (!(loss > 0)) throw new Error(`a loss coefficient of ${loss} has no discharge coefficient`);
  return 1 / Math.sqrt(loss);
}

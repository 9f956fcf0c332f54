import { pointsLetGo } from '@panewright/magnets';
import { ok, type Result } from '@panewright/quantity';
import { type MarginAt, marginCurve } from './marginCurve.ts';
import { type HeldPoint, holdPanel, type MarginRefusal, type PanelLoad } from './margins.ts';
import { type WholeMargin, wholeMargin } from './wholeMargin.ts';

/** Mean wind at which something gives, m/s, with bad ends and with good ones; null past 100 m/s of gust. */
export interface LetsGo {
  readonly low: number | null;
  readonly high: number | null;
}

/** What a panel has in hand at one mean wind. */
export interface WindMargin {
  readonly wind: number;
  /** Of the panel as a whole: below 1 it comes off. */
  readonly whole: WholeMargin;
  /** Of its weakest point by the mechanics of the edge: below 1 that point begins to give. */
  readonly weakest: MarginAt;
}

/** Margins against wind, for a plot. Estimates. */
export interface WindMargins {
  readonly curve: readonly WindMargin[];
  /** Of the panel as a whole. */
  readonly letsGo: LetsGo;
  /** Of each point, in the order of the panel's points. */
  readonly points: readonly { readonly point: number; readonly letsGo: LetsGo }[];
}

/**
 * Margins of a panel and of its weakest point at each of the winds.
 *
 * @param winds m/s of mean wind
 * @accuracy as wholeMargin and panelMargins: estimates
 * @refuses as they do
 * @source as wholeMargin, panelHold
 */
export function windCurve(
  points: readonly HeldPoint[],
  load: PanelLoad,
  winds: readonly number[],
): Result<readonly WindMargin[], MarginRefusal> {
  const weakest = marginCurve(points, load, winds);
  if (!weakest.ok) return weakest;
  const curve: WindMargin[] = [];
  for (const [k, wind] of winds.entries()) {
    const whole = wholeMargin(points, load, wind);
    if (!whole.ok) return whole;
    curve.push({ wind, whole: whole.value, weakest: weakest.value[k]! });
  }
  return ok(curve);
}

/**
 * As windCurve, with the winds at which the panel and each point let go.
 *
 * @param winds m/s of mean wind
 * @accuracy as wholeMargin and panelMargins: estimates
 * @refuses as they do
 * @source as wholeMargin, panelHold
 */
export function windMargins(
  points: readonly HeldPoint[],
  load: PanelLoad,
  winds: readonly number[],
): Result<WindMargins, MarginRefusal> {
  const curve = windCurve(points, load, winds);
  if (!curve.ok) return curve;
  const now = wholeMargin(points, load, load.wind);
  if (!now.ok) return now;
  const ends = pointEnds(points, load);
  if (!ends.ok) return ends;
  return ok({ curve: curve.value, letsGo: now.value.letsGoAt, points: ends.value });
}

function pointEnds(
  points: readonly HeldPoint[],
  load: PanelLoad,
): Result<WindMargins['points'], MarginRefusal> {
  const taut = holdPanel(points, load, load.wind, 'taut');
  if (!taut.ok) return taut;
  const loose = holdPanel(points, load, load.wind, 'loose');
  if (!loose.ok) return loose;
  const worst = pointsLetGo(taut.value, 'worst');
  if (!worst.ok) return worst;
  const best = pointsLetGo(loose.value, 'best');
  if (!best.ok) return best;
  const mean = (gust: number | 'beyondRange') => (gust === 'beyondRange' ? null : gust / load.gustFactor);
  return ok(
    points.map(({ number }, k) => ({
      point: number,
      letsGo: { low: mean(worst.value[k]!), high: mean(best.value[k]!) },
    })),
  );
}

import {
  type Millimetre,
  mm,
  type Newton,
  newton,
  ok,
  type Pascal,
  type Quantity,
  type Result,
  refuse,
} from '@panewright/quantity';

/** Load along an edge, or force in cloth across a width. */
export type NewtonPerMillimetreRun = Quantity<'N/mm run'>;

export type SagRefusal = {
  readonly code: 'SPAN_FIGURE_NOT_POSITIVE';
  readonly figure: 'span' | 'sag' | 'load' | 'pressure' | 'stiffness';
  readonly value: number;
};

/** A figure that must be above zero and is not, as a refusal. */
function notPositive(figure: SagRefusal['figure'], value: number): SagRefusal | undefined {
  return value > 0 && Number.isFinite(value)
    ? undefined
    : { code: 'SPAN_FIGURE_NOT_POSITIVE', figure, value };
}

export interface HangingEdge {
  /** Pull along the chord, the same everywhere. */
  readonly tension: Newton;
  /** Pull at a hold point, where it is greatest. */
  readonly greatest: Newton;
  /** Length along the curve. */
  readonly length: Millimetre;
}

/**
 * An edge between two level hold points, hanging as a parabola under a load spread evenly along the chord.
 *
 * @param load N per mm of span
 * @returns tension H = w L^2 / 8 s, greatest pull at the ends, and length
 * @accuracy exact for the parabola; a catenary differs by 0.03 % at a sag of 1/60
 * @refuses SPAN_FIGURE_NOT_POSITIVE
 * @source sources.md#udoeyo
 */
export function hangingEdge(
  span: Millimetre,
  sag: Millimetre,
  load: NewtonPerMillimetreRun,
): Result<HangingEdge, SagRefusal> {
  const bad = notPositive('span', span) ?? notPositive('sag', sag) ?? notPositive('load', load);
  if (bad) return refuse(bad);
  const tension = (load * span * span) / (8 * sag);
  const a = (4 * sag) / span;
  return ok({
    tension: newton(tension),
    greatest: newton(Math.hypot(tension, (load * span) / 2)),
    length: mm((span / 2) * (Math.sqrt(1 + a * a) + Math.asinh(a) / a)),
  });
}

export type SlackRefusal = {
  readonly code: 'SLACK_OUT_OF_RANGE';
  readonly slack: number;
  readonly most: number;
};

/** A strip a tenth longer than its chord is no edge of a fitted panel, and no shallow parabola. */
const MOST_SLACK = 0.1;

export interface StretchedStrip {
  readonly sag: Millimetre;
  /** Per mm of width. */
  readonly tension: NewtonPerMillimetreRun;
}

/** Positive root of s^3 - slack^2 s = pull, by Newton from above, where the curve is convex. */
function sagRoot(slackSquared: number, pull: number): number {
  let s = Math.cbrt(pull) + Math.sqrt(slackSquared);
  for (let pass = 0; pass < 60; pass++) {
    const step = (s * s * s - slackSquared * s - pull) / (3 * s * s - slackSquared);
    s -= step;
    if (Math.abs(step) <= 1e-15 * s) break;
  }
  return s;
}

/**
 * Sag of a flat strip under pressure: it takes up its slack, then stretches until the parabola carries the load,
 * (s^2 - s0^2) s = 3 p L^4 / 64 E' with s0 the sag of the slack alone, s0^2 = 3 slack L^2 / 8.
 *
 * @param stiffness E', N per mm of width for unit strain
 * @param slack length over the chord before any load, a true ratio; 0 is just taut
 * @returns sag and tension per width
 * @range sag under a tenth of the span
 * @accuracy 1 % of the model at a sag of a tenth; the stiffness of mesh is an estimate until measured
 * @refuses SPAN_FIGURE_NOT_POSITIVE, SLACK_OUT_OF_RANGE
 * @source sources.md#magnets-stretch-sag
 */
export function stretchSag(
  span: Millimetre,
  pressure: Pascal,
  stiffness: NewtonPerMillimetreRun,
  slack = 0,
): Result<StretchedStrip, SagRefusal | SlackRefusal> {
  const bad =
    notPositive('span', span) ?? notPositive('pressure', pressure) ?? notPositive('stiffness', stiffness);
  if (bad) return refuse(bad);
  if (!(slack >= 0 && slack <= MOST_SLACK))
    return refuse({ code: 'SLACK_OUT_OF_RANGE', slack, most: MOST_SLACK });
  const sag = stretchedSag(span, pressure, stiffness, slack);
  return ok({ sag: mm(sag), tension: tensionAt(span, pressure, sag) });
}

/** Kernel of stretchSag: figures already checked. @source as stretchSag */
export const stretchedSag = (span: number, pressure: number, stiffness: number, slack: number): number =>
  sagRoot((3 / 8) * slack * span * span, (3e-6 * pressure * span ** 4) / (64 * stiffness));

/** Tension per width of a strip that carries a pressure at a sag. @source as stretchSag */
export const tensionAt = (span: number, pressure: number, sag: number): NewtonPerMillimetreRun =>
  ((1e-6 * pressure * span * span) / (8 * sag)) as NewtonPerMillimetreRun;

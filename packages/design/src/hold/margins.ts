import {
  AIR_DENSITY,
  dynamicPressure,
  type HoldMode,
  type HoldPanel,
  type HoldPointStrength,
  type LoadRefusal,
  type Margin,
  magnetGrade,
  type NewtonPerMillimetreRun,
  type PanelHold,
  type PanelHoldRefusal,
  type PointHold,
  type PointStrength,
  panelLetsGo,
  pointHolds,
  pointStrength,
  type SpeedRefusal,
  screenLoad,
  USUAL_COATING,
  USUAL_TOLERANCES,
} from '@panewright/magnets';
import {
  celsius,
  metrePerSecond,
  mm,
  mm2,
  newton,
  ok,
  pascal,
  type Result,
  radian,
  refuse,
} from '@panewright/quantity';
import type { Magnet } from '../document/catalogue.ts';
import { bodyOf } from './holdOpening.ts';
import { lately } from './lately.ts';

/** Two ends of a figure that was not measured. */
export interface Range {
  readonly low: number;
  readonly high: number;
}

/** What holds one point: its pull and side hold with their intervals, N, and the face it peels over, mm. */
export type Strength = Pick<PointStrength, 'pull' | 'breakAway' | 'face'> & { readonly friction: Range };

export type StrengthRefusal =
  | { readonly code: 'GRADE_UNKNOWN'; readonly magnet: string; readonly grade: string }
  | { readonly code: 'PULL_REFUSED'; readonly gap: number; readonly refusal: string };

/** A pair across a gap, hot. */
export interface PairAcross {
  readonly outside: Magnet;
  readonly inside: Magnet;
  /** mm */
  readonly gap: number;
  /** Hottest the magnets get, °C. */
  readonly hottest: number;
  /** Of the panel on the glass, true ratios. */
  readonly friction: Range;
}

const strengthOf = lately(
  ({ outside, inside, gap, hottest, friction }: PairAcross) =>
    JSON.stringify([
      outside.shape,
      outside.grade,
      inside.shape,
      inside.grade,
      outside.id === inside.id,
      gap,
      hottest,
      friction,
    ]),
  (pair: PairAcross): Result<Strength, StrengthRefusal> => {
    const grades = [pair.inside, pair.outside].map(({ grade }) => magnetGrade(grade));
    const [inside, outside] = grades;
    for (const [at, magnet] of [pair.inside, pair.outside].entries())
      if (!grades[at]!.ok) return refuse({ code: 'GRADE_UNKNOWN', magnet: magnet.id, grade: magnet.grade });
    if (!inside?.ok || !outside?.ok) throw new Error('a refused grade passed');
    const strength = pointStrength(
      {
        a: bodyOf(pair.inside),
        b: bodyOf(pair.outside),
        remanenceA: inside.value.remanence.design,
        remanenceB: outside.value.remanence.design,
        gap: mm(pair.gap),
        coating: USUAL_COATING,
        temperature: celsius(pair.hottest),
        tolerances: USUAL_TOLERANCES,
        sameBatch: pair.outside.id === pair.inside.id,
      },
      pair.friction,
    );
    return strength.ok
      ? ok({ ...strength.value, friction: pair.friction })
      : refuse({ code: 'PULL_REFUSED', gap: pair.gap, refusal: strength.refusal.code });
  },
);

/**
 * Strength of one catalogue pair across a gap, as `pointStrength` gives it. Lately asked ones are remembered.
 *
 * @refuses GRADE_UNKNOWN, PULL_REFUSED
 * @source as pointStrength
 */
export const pairStrength = (pair: PairAcross): Result<Strength, StrengthRefusal> => strengthOf(pair);

/** Where one point is held, in the opening's frame (y up), with what holds it. */
export interface HeldPoint {
  readonly number: number;
  readonly kind: 'corner' | 'edge';
  readonly x: number;
  readonly y: number;
  readonly strength: Strength;
}

/** What the panel and its place are like. Ranges are estimates until the shop measures them. */
export interface PanelLoad {
  /** mm², N, and open share of the mesh. */
  readonly area: number;
  readonly weight: number;
  readonly openness: number;
  /** Mean wind, m/s, and the gust over it. */
  readonly wind: number;
  readonly gustFactor: number;
  /** Lean of the glass from upright, radians; positive where the panel hangs under it. */
  readonly lean: number;
  /** Of the mesh along an edge, N/mm for unit strain. */
  readonly stiffness: Range;
  /** Length of an edge between two points over its chord, true ratios. */
  readonly slack: Range;
  /** Height over the glass at which the cloth draws on a pocket, mm. */
  readonly arm: number;
}

/** Placeholders until measured: sources.md#mesh-stiffness. Slack of 0.2 to 1 % is common practice, no source. */
export const USUAL_CLOTH: Pick<PanelLoad, 'stiffness' | 'slack' | 'arm' | 'lean'> = {
  stiffness: { low: 50, high: 250 },
  slack: { low: 0.002, high: 0.01 },
  arm: 2.5,
  lean: 0,
};

export interface PointMargin {
  readonly number: number;
  /** Strength over demand with every figure at the middle of its range, and with the ends set against one another. */
  readonly value: number | 'unloaded';
  readonly low: number | 'unloaded';
  readonly high: number | 'unloaded';
  /** How it would let go first. */
  readonly mode: HoldMode;
  /** Asked of it at the worst: off the glass and along it, N. */
  readonly normal: number;
  readonly side: number;
  readonly pull: Range & { readonly nominal: number };
}

/** An estimate: try a panel before it is trusted, and never for a moving vehicle. */
export interface PanelMargins {
  readonly points: readonly PointMargin[];
  /** Number of the point with the least low margin. */
  readonly weakest: number;
  readonly margin: Pick<PointMargin, 'value' | 'low' | 'high' | 'mode'>;
  /** Mean wind, m/s, at which the first point lets go, low and high; `beyondRange` past 100 m/s of gust. */
  readonly letsGoAt: { readonly low: number | 'beyondRange'; readonly high: number | 'beyondRange' };
}

/**
 * Margin of every hold point of a panel in the stated weather, and the wind at which the first lets go.
 *
 * @returns ratios of strength over demand; m/s of mean wind
 * @range three points or more, in order round the panel
 * @accuracy an estimate; low and high set all bad ends against all good ones, so they lie wide
 * @refuses as panelHold, dynamicPressure and screenLoad
 * @source as panelHold, screenLoad
 */
export function panelMargins(
  points: readonly HeldPoint[],
  load: PanelLoad,
): Result<PanelMargins, MarginRefusal> {
  const [taut, middle, loose] = (['taut', 'middle', 'loose'] as const).map((cloth) =>
    holdsAt(points, load, load.wind, cloth),
  ) as [Holds, Holds, Holds];
  if (!taut.ok) return taut;
  if (!middle.ok) return middle;
  if (!loose.ok) return loose;
  const margins = points.map((point, at) =>
    pointMargin(point, taut.value.points[at]!, middle.value.points[at]!, loose.value.points[at]!),
  );
  const weakest = margins[taut.value.weakest]!;
  const low = letsGo(points, load, 'worst');
  if (!low.ok) return low;
  const high = letsGo(points, load, 'best');
  if (!high.ok) return high;
  return ok({
    points: margins,
    weakest: weakest.number,
    margin: { value: weakest.value, low: weakest.low, high: weakest.high, mode: weakest.mode },
    letsGoAt: { low: low.value, high: high.value },
  });
}

/**
 * The low margin of the weakest point alone: what a search over many layouts asks for.
 *
 * @returns a ratio; 0 where the panel is refused (fewer than three points)
 * @source as panelHold
 */
export function lowMargin(points: readonly HeldPoint[], load: PanelLoad): number | 'unloaded' {
  const taut = holdsAt(points, load, load.wind, 'taut');
  return taut.ok ? lowOf(taut.value.points[taut.value.weakest]!.margin) : 0;
}

/** Mean wind at which the first point lets go: taut cloth with every bad end, or slack cloth with every good one. */
function letsGo(
  points: readonly HeldPoint[],
  load: PanelLoad,
  side: 'worst' | 'best',
): Result<number | 'beyondRange', MarginRefusal> {
  const panel = holdPanel(points, load, load.wind, side === 'worst' ? 'taut' : 'loose');
  if (!panel.ok) return panel;
  const gust = panelLetsGo(panel.value, side);
  return gust.ok && gust.value !== 'beyondRange' ? ok(gust.value / load.gustFactor) : gust;
}

type Holds = Result<Omit<PanelHold, 'letGo'>, MarginRefusal>;

/** Every point in one wind, with the cloth at one end of its slack. @source as pointHolds */
export function holdsAt(
  points: readonly HeldPoint[],
  load: PanelLoad,
  wind: number,
  cloth: 'taut' | 'middle' | 'loose',
): Holds {
  const panel = holdPanel(points, load, wind, cloth);
  return panel.ok ? pointHolds(panel.value) : panel;
}

function pointMargin(
  { number, strength: { pull } }: HeldPoint,
  taut: PointHold,
  middle: PointHold,
  loose: PointHold,
): PointMargin {
  return {
    number,
    value: lowOf(middle.margin),
    low: lowOf(taut.margin),
    high: loose.margin === 'unloaded' ? 'unloaded' : loose.margin.high,
    mode: taut.governing,
    normal: taut.normal.high,
    side: taut.side.high,
    pull: { nominal: pull.nominal, low: pull.low, high: pull.high },
  };
}

/** @source none: one end of a margin that panelHold gave */
export const lowOf = (margin: Margin): number | 'unloaded' => (margin === 'unloaded' ? margin : margin.low);

const middleOf = ({ low, high }: Range): number => (low + high) / 2;

export type MarginRefusal = PanelHoldRefusal | SpeedRefusal | LoadRefusal;

/**
 * The panel as the hold laws take it: with both ends of every figure and the cloth at its least or most slack, or with the
 * middles alone. Slack eases an edge, so taut cloth is the worst and loose the best.
 */
export function holdPanel(
  points: readonly HeldPoint[],
  load: PanelLoad,
  wind: number,
  cloth: 'taut' | 'middle' | 'loose',
): Result<HoldPanel, MarginRefusal> {
  const pressure = dynamicPressure(metrePerSecond(wind * load.gustFactor));
  if (!pressure.ok) return pressure;
  const lifts = { corner: liftAt(load, 'corner'), edge: liftAt(load, 'field') };
  if (!lifts.corner.ok) return lifts.corner;
  if (!lifts.edge.ok) return lifts.edge;
  const lift = { corner: lifts.corner.value, edge: lifts.edge.value };
  const ends = cloth !== 'middle';
  const stiffness = ends ? load.stiffness : both(Math.sqrt(load.stiffness.low * load.stiffness.high));
  return ok({
    points: points.map((point) => strengthAt(point, lift[point.kind], ends)),
    area: mm2(load.area),
    weight: newton(load.weight),
    lean: radian(load.lean),
    pressure: pressure.value,
    airDensity: AIR_DENSITY,
    stiffness: stiffness as { low: NewtonPerMillimetreRun; high: NewtonPerMillimetreRun },
    slack: cloth === 'taut' ? load.slack.low : ends ? load.slack.high : middleOf(load.slack),
    arm: mm(load.arm),
  });
}

/** Lift for each pascal of dynamic pressure. */
const liftAt = ({ openness }: PanelLoad, zone: 'corner' | 'field') => screenLoad(openness, pascal(1), zone);

const both = (value: number): Range => ({ low: value, high: value });

function strengthAt(point: HeldPoint, lift: Range, ends: boolean): HoldPointStrength {
  const { pull, breakAway, friction, face } = point.strength;
  const one = (range: Range) => (ends ? range : both(middleOf(range)));
  const newtons = ({ low, high }: Range) => ({ low: newton(low), high: newton(high) });
  return {
    x: mm(point.x),
    y: mm(point.y),
    pull: newtons(ends ? pull : both(pull.nominal)),
    breakAway: newtons(one(breakAway)),
    friction: one(friction),
    face,
    load: one(lift),
  };
}

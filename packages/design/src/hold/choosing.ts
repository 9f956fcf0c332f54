import { centringStiffness, lastingLossLimit, magnetGrade } from '@panewright/magnets';
import { mm } from '@panewright/quantity';
import type { Magnet } from '../document/catalogue.ts';
import type { Face } from './erosion.ts';
import { faceOf } from './faceOf.ts';
import { fewestPoints } from './fewestPoints.ts';
import { bodyOf } from './holdOpening.ts';
import type { Layout, PlacingInput } from './layout.ts';
import {
  type HeldPoint,
  lowMargin,
  type PanelLoad,
  pairStrength,
  panelMargins,
  type Range,
  type Strength,
} from './margins.ts';
import { type MeetingInput, type MeetingRefusal, meeting } from './meeting.ts';
import { type Placer, placer } from './placing.ts';
import { type SteelItem, steelStrength } from './steelStrength.ts';
import { wholeMargin } from './wholeMargin.ts';

/** A panel that magnets are to be chosen for. */
export interface ChoiceInput {
  readonly magnets: readonly Magnet[];
  /** Strips that may stand in for the inside magnets. */
  readonly steel: readonly SteelItem[];
  /** Between the magnets at a corner and at the middle of an edge, mm. */
  readonly gap: { readonly corner: number; readonly edge: number };
  readonly hottest: number;
  readonly friction: Range;
  readonly load: PanelLoad;
  /** Weight of the panel, N, with so many points, each with this magnet in a patch `pocket` wide (the panel's own where left out), or with none; the load's where left out. */
  readonly weightOf?: (points: number, outside: Magnet | null, pocket?: number) => number;
  /** From the pattern's frame to the opening's, where weight hangs down. */
  readonly inOpening: (centre: { readonly x: number; readonly y: number }) => {
    readonly x: number;
    readonly y: number;
  };
  /** As for `placing`; the reach is that of each magnet in turn. */
  readonly placing: Omit<PlacingInput, 'reach'>;
  /** The pockets the pair must meet in: one of each kind. */
  readonly pockets: readonly Omit<MeetingInput, 'outside' | 'inside'>[];
  /** Low margin asked for. */
  readonly asked: number;
  /** Of what: of the weakest point by the mechanics of the edge (where left out), or of the panel as a whole. */
  readonly marginOf?: 'weakestPoint' | 'wholePanel';
}

export interface MagnetChoice {
  readonly outside: string;
  readonly inside: string;
  readonly points: number;
  /** Of the magnets (and strip) on one panel, as used, minor units. */
  readonly cost: number;
  readonly margin: number | 'unloaded';
  /** Mean wind, m/s, at which what the margin is of lets go. */
  readonly letsGoAt: number | 'beyondRange';
  /** Mean wind, m/s, at which the first point may begin to give by the mechanics of the edge. */
  readonly pointGivesAt: number | 'beyondRange';
  /** Least travel across the edge in any pocket, mm. */
  readonly travel: number;
  readonly layout: Layout;
}

export type ChoiceReason =
  | MeetingRefusal
  | { readonly code: 'GRADE_UNKNOWN'; readonly magnet: string; readonly grade: string }
  | { readonly code: 'PULL_REFUSED'; readonly gap: number; readonly refusal: string }
  | {
      readonly code: 'TOO_HOT_FOR_MAGNET';
      readonly magnet: string;
      readonly limit: number;
      readonly hottest: number;
    }
  | { readonly code: 'PUSHES_OFF_CENTRE'; readonly stiffness: number }
  | {
      readonly code: 'MARGIN_TOO_LOW';
      readonly margin: number;
      readonly asked: number;
      /** The most points that do not crowd, or as many as were tried. */
      readonly points: number;
      readonly pull: number;
    };

export interface Rejected {
  readonly outside: string;
  readonly inside: string;
  /** Every reason found, the first that settles it first. */
  readonly because: readonly ChoiceReason[];
}

export interface MagnetRanking {
  /** Best first: fewest points, then cost, then margin, then travel. */
  readonly choices: readonly MagnetChoice[];
  readonly rejected: readonly Rejected[];
}

/** Denser layouts than the shop's spacing by whole numbers up to this are looked at before the count is made least. */
const DENSEST = 6;

/**
 * Which magnets? Every pair of the catalogue, and every magnet to a steel strip, is worked out for the panel: whether they
 * meet in its pockets, bear the heat, stay on centre, and how few of them meet the margin.
 *
 * @returns what would do, best first, and for the rest every reason against it with its figures
 * @accuracy as panelMargins: an estimate
 * @source as panelMargins, meeting, fewestPoints
 */
export function choosing(input: ChoiceInput): MagnetRanking {
  const choices: MagnetChoice[] = [];
  const rejected: Rejected[] = [];
  const layoutAt = layoutsOf(input);
  for (const [outside, inside] of pairsOf(input)) {
    const judged = judge(input, outside, inside, layoutAt);
    if ('because' in judged) rejected.push(judged);
    else choices.push(judged);
  }
  return { choices: choices.sort(byRank), rejected };
}

/**
 * The first choice of `choosing` alone. Of a pair that one reason settles, the others are not worked out: a plan waits
 * for this.
 *
 * @accuracy as choosing
 * @source as choosing
 */
export function bestChoice(input: ChoiceInput): MagnetChoice | undefined {
  const layoutAt = layoutsOf(input);
  const choices = pairsOf(input).flatMap(([outside, inside]): readonly MagnetChoice[] => {
    if (heatReasons(input, outside, inside).length > 0) return [];
    const strengths = strengthsOf(input, outside, inside);
    if ('code' in strengths) return [];
    const found = countFor(input, outside, strengths, layoutAt);
    if ('code' in found || centreReasons(input, outside, inside).length > 0) return [];
    const because: ChoiceReason[] = [];
    const travel = leastTravel(input, outside, inside, because);
    return because.length > 0 ? [] : [choiceOf({ input, outside, inside, strengths, found, travel })];
  });
  return choices.sort(byRank)[0];
}

type Pair = readonly [outside: Magnet, inside: Magnet | SteelItem];

const pairsOf = ({ magnets, steel }: ChoiceInput): readonly Pair[] =>
  magnets.flatMap((outside) => [...magnets, ...steel].map((inside): Pair => [outside, inside]));

function layoutsOf({ placing }: ChoiceInput): LayoutAt {
  const placer = rememberedPlacing(placing.zones.length > 0);
  return {
    placer,
    at: (reach, dense) => {
      const { spacing, upTo } = placing;
      const layout = placer({ ...placing, reach, spacing: spacing / dense, upTo: upTo / dense })();
      if (!layout) throw new Error('the rule set no layout');
      return layout;
    },
  };
}

function byRank(a: MagnetChoice, b: MagnetChoice): number {
  const margin = ({ margin: ratio }: MagnetChoice) => (ratio === 'unloaded' ? Number.MAX_VALUE : ratio);
  return a.points - b.points || a.cost - b.cost || margin(b) - margin(a) || b.travel - a.travel;
}

/** Radius of the circle a magnet's face lies in. */
const reachOf = ({ shape }: Magnet): number =>
  shape.kind === 'disc' ? shape.diameter / 2 : Math.hypot(shape.width, shape.height) / 2;

const isSteel = (inside: Magnet | SteelItem): inside is SteelItem => !('shape' in inside);

interface LayoutAt {
  readonly at: (reach: number, dense: number) => Layout;
  readonly placer: (input: PlacingInput) => Placer;
}

/** Layouts of one panel by what differs between magnets; how far a face reaches matters only beside something to keep clear of. */
function rememberedPlacing(reachMatters: boolean): (input: PlacingInput) => Placer {
  const placers = new Map<string, Placer>();
  return (input) => {
    const { spacing, upTo, reach } = input;
    const key = JSON.stringify([spacing, upTo, reachMatters ? reach : 0]);
    const found = placers.get(key) ?? remembered(placer(input));
    placers.set(key, found);
    return found;
  };
}

function remembered(place: Placer): Placer {
  const known = new Map<string, Layout | null>();
  return (counts) => {
    const key = JSON.stringify(counts ?? null);
    if (!known.has(key)) known.set(key, place(counts));
    return known.get(key) ?? null;
  };
}

function judge(
  input: ChoiceInput,
  outside: Magnet,
  inside: Magnet | SteelItem,
  layoutAt: LayoutAt,
): MagnetChoice | Rejected {
  const named = { outside: outside.id, inside: inside.id };
  const because: ChoiceReason[] = [];
  const travel = leastTravel(input, outside, inside, because);
  because.push(...heatReasons(input, outside, inside), ...centreReasons(input, outside, inside));
  const strengths = strengthsOf(input, outside, inside);
  if ('code' in strengths) return { ...named, because: [...because, strengths] };
  const found = countFor(input, outside, strengths, layoutAt);
  if ('code' in found) because.push(found);
  if (because.length > 0 || 'code' in found) return { ...named, because };
  return choiceOf({ input, outside, inside, strengths, found, travel });
}

interface Found {
  readonly input: ChoiceInput;
  readonly outside: Magnet;
  readonly inside: Magnet | SteelItem;
  readonly strengths: Strengths;
  readonly found: Layout;
  readonly travel: number;
}

function choiceOf({ input, outside, inside, strengths, found, travel }: Found): MagnetChoice {
  const held = heldBy(found, strengths, input);
  const load = loadWith(input, held.length, outside);
  const margins = panelMargins(held, load);
  if (!margins.ok) throw new Error(`a panel that was worked out was refused: ${margins.refusal.code}`);
  const { margin, letsGoAt } = margins.value;
  const whole = input.marginOf === 'wholePanel' ? wholeMargin(held, load, load.wind) : null;
  if (whole && !whole.ok) throw new Error(`a panel that was worked out was refused: ${whole.refusal.code}`);
  return {
    outside: outside.id,
    inside: inside.id,
    points: found.points.length,
    cost: costOf(outside, inside, found),
    margin: whole?.value.low ?? margin.low,
    letsGoAt: whole?.value.letsGoAt.low ?? letsGoAt.low,
    pointGivesAt: letsGoAt.low,
    travel,
    layout: found,
  };
}

/** Room across the edge in the tightest pocket; reasons where the pair does not meet in one. */
function leastTravel(
  input: ChoiceInput,
  outside: Magnet,
  inside: Magnet | SteelItem,
  because: ChoiceReason[],
): number {
  const insideFace: Face = isSteel(inside)
    ? { kind: 'block', along: reachOf(outside) * 2, across: inside.width }
    : faceOf(inside);
  let travel = Number.POSITIVE_INFINITY;
  for (const pocket of input.pockets) {
    const found = meeting({ ...pocket, outside: faceOf(outside), inside: insideFace });
    if (found.ok) travel = Math.min(travel, found.value.travel.outward + found.value.travel.inward);
    else if (because.length === 0) because.push(found.refusal);
  }
  return travel;
}

function heatReasons(
  { hottest }: ChoiceInput,
  outside: Magnet,
  inside: Magnet | SteelItem,
): readonly ChoiceReason[] {
  const magnets = isSteel(inside) || inside.id === outside.id ? [outside] : [outside, inside];
  return magnets.flatMap((magnet): ChoiceReason[] => {
    const grade = magnetGrade(magnet.grade);
    if (!grade.ok) return [];
    const { limit } = lastingLossLimit(bodyOf(magnet), grade.value);
    return limit >= hottest ? [] : [{ code: 'TOO_HOT_FOR_MAGNET', magnet: magnet.id, limit, hottest }];
  });
}

function centreReasons(
  { gap }: ChoiceInput,
  outside: Magnet,
  inside: Magnet | SteelItem,
): readonly ChoiceReason[] {
  if (isSteel(inside)) return [];
  const [a, b] = [magnetGrade(inside.grade), magnetGrade(outside.grade)];
  if (!a.ok || !b.ok) return [];
  const found = centringStiffness({
    a: bodyOf(inside),
    b: bodyOf(outside),
    remanenceA: a.value.remanence.design,
    remanenceB: b.value.remanence.design,
    gap: mm(Math.min(gap.corner, gap.edge)),
  });
  if (!found.ok || !found.value.pushesOff) return [];
  return [{ code: 'PUSHES_OFF_CENTRE', stiffness: Math.min(found.value.x, found.value.y) }];
}

interface Strengths {
  readonly corner: Strength;
  readonly edge: Strength;
}

function strengthsOf(
  { gap, hottest, friction }: ChoiceInput,
  outside: Magnet,
  inside: Magnet | SteelItem,
): Strengths | Extract<ChoiceReason, { code: 'GRADE_UNKNOWN' | 'PULL_REFUSED' }> {
  const across = (mid: number) =>
    isSteel(inside)
      ? steelStrength({ outside, steel: inside, gap: mid, hottest, friction })
      : pairStrength({ outside, inside, gap: mid, hottest, friction });
  const corner = across(gap.corner);
  if (!corner.ok) return corner.refusal;
  const edge = across(gap.edge);
  return edge.ok ? { corner: corner.value, edge: edge.value } : edge.refusal;
}

/** The points of a layout, in the opening's frame, with what holds each. */
function heldBy({ points }: Layout, strengths: Strengths, { inOpening }: ChoiceInput): readonly HeldPoint[] {
  return points.map(({ kind, centre }, index) => ({
    number: index + 1,
    kind,
    ...inOpening(centre),
    strength: strengths[kind],
  }));
}

/**
 * The low margin that a choice goes by, with the weight of its magnets.
 *
 * @returns a ratio; 0 where the panel is refused
 * @source as lowMargin, wholeMargin
 */
export function lowMarginFor(
  points: readonly HeldPoint[],
  input: Pick<ChoiceInput, 'load' | 'weightOf' | 'marginOf'>,
  outside: Magnet | null,
): number | 'unloaded' {
  const { marginOf } = input;
  const load = loadWith(input, points.length, outside);
  if (marginOf !== 'wholePanel') return lowMargin(points, load);
  const whole = wholeMargin(points, load, load.wind);
  return whole.ok ? whole.value.low : 0;
}

/** The load with the weight that so many of these magnets bring: large ones are soon as heavy as the cloth. */
const loadWith = (
  { load, weightOf }: Pick<ChoiceInput, 'load' | 'weightOf'>,
  points: number,
  outside: Magnet | null,
): PanelLoad => (weightOf ? { ...load, weight: weightOf(points, outside) } : load);

/** Layouts tried for one pair: a ranking goes through every pair of the catalogue, and a plan waits for it. */
const MOST_LAYOUTS = 40;

/** The layout with the fewest points found that meets the margin, or why there is none. */
function countFor(
  input: ChoiceInput,
  outside: Magnet,
  strengths: Strengths,
  layoutAt: LayoutAt,
): Layout | Extract<ChoiceReason, { code: 'MARGIN_TOO_LOW' }> {
  const reach = reachOf(outside);
  const marginOf = (layout: Layout) => lowMarginFor(heldBy(layout, strengths, input), input, outside);
  const { asked } = input;
  const first = layoutAt.at(reach, 1);
  let best = { margin: marginOf(first), points: first.points.length };
  if (ratio(best.margin) >= asked) return first;
  const crowds = ({ problems }: Layout) => problems.filter(({ code }) => code === 'POINTS_CROWDED').length;
  for (let dense = 2; dense <= DENSEST; dense++) {
    const layout = layoutAt.at(reach, dense);
    if (crowds(layout) > crowds(first)) break;
    const margin = marginOf(layout);
    if (ratio(margin) > ratio(best.margin)) best = { margin, points: layout.points.length };
    if (ratio(margin) < asked) continue;
    const asRule = { ...input.placing, reach };
    const fewest = fewestPoints(asRule, marginOf, asked, layoutAt.placer(asRule), MOST_LAYOUTS);
    return fewest.ok && fewest.value.layout.points.length < layout.points.length
      ? fewest.value.layout
      : layout;
  }
  return {
    code: 'MARGIN_TOO_LOW',
    margin: ratio(best.margin),
    asked,
    points: best.points,
    pull: Math.min(strengths.corner.pull.low, strengths.edge.pull.low),
  };
}

const ratio = (margin: number | 'unloaded'): number =>
  margin === 'unloaded' ? Number.POSITIVE_INFINITY : margin;

/** Magnets by the piece; a strip runs under the points, cut to the magnet's span and as much again. */
function costOf(outside: Magnet, inside: Magnet | SteelItem, { points }: Layout): number {
  const each = ({ pack }: Magnet) => pack.price / pack.quantity;
  const partner = isSteel(inside) ? (inside.pricePerMetre * 4 * reachOf(outside)) / 1000 : each(inside);
  return Math.round(points.length * (each(outside) + partner));
}

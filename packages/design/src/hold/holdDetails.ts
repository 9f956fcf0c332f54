import { invert, moveOutline, movePoint, type Outline, type Rigid } from '@panewright/geometry';
import { type Newton, newton } from '@panewright/quantity';
import { type Materials, sameHolder } from '../derive/materials.ts';
import { remember, sameEntries } from '../derive/remember.ts';
import type { Catalogue, Magnet } from '../document/catalogue.ts';
import type { Find } from '../plan/finding.ts';
import type { HoldByPoint, HoldMeeting } from '../plan/holdDetail.ts';
import type { HoldOpening, HoldPoint, OpeningPlan, PanelPlan } from '../plan/plan.ts';
import { reportApart } from './apartFindings.ts';
import { faceOf } from './faceOf.ts';
import { runOfOne } from './heldOtherwise.ts';
import { behindGlass, frictionOf, holdingStrength } from './holding.ts';
import { type PanelLoad, panelMargins, type Strength, USUAL_CLOTH } from './margins.ts';
import { meetings } from './meeting.ts';
import { type StackSection, stackSection } from './stackSection.ts';

/** Room round a magnet in its pocket, so that it goes in, mm. Common practice, no source. */
export const EASE = 1;
/** Bare glass wanted round an inside magnet, for its tape, mm. Common practice, no source. */
export const TAPE_MARGIN = 2;
/** Standard acceleration of free fall, m/s² (exact by definition). */
const GRAVITY = 9.80665;

/** What the points of one opening are worked out from. */
export interface DetailContext {
  readonly points: readonly HoldPoint[];
  /** The same object while the points are the same. */
  readonly places: object;
  readonly panel: PanelPlan;
  readonly place: Rigid;
  readonly materials: Materials;
  readonly habits: Catalogue['habits'];
  /** Of the catalogue: to be proposed where the chosen ones do not meet. */
  readonly magnets: readonly Magnet[];
  /** Of each point's pull, from its neighbours: see neighbourShares. */
  readonly shares: readonly number[];
}

/** What is known of each hold point on one opening's glass: margin by point, and where its pair can meet. */
export function holdDetails(
  plan: OpeningPlan,
  context: DetailContext,
  find: Find,
): Required<Pick<HoldOpening, 'byPoint' | 'letsGo' | 'meetings'>> {
  const meets = plan.shape !== null && context.materials.holder.kind !== 'fastener';
  const meetings = meets ? meetingsOn(plan.shape.outline, { ...context, plan }, find) : [];
  return { ...margins(plan, context, ignore), meetings };
}

/** Margins find nothing to say. */
const ignore = () => {};

const margins = remember(
  marginsOf,
  (a, b) =>
    a.places === b.places &&
    a.panel === b.panel &&
    a.habits === b.habits &&
    a.place === b.place &&
    sameHolder(a.materials.holder, b.materials.holder) &&
    sameEntries(a.shares, b.shares) &&
    (['fabric', 'outside', 'inside', 'tape', 'wrapFilm'] as const).every(
      (key) => a.materials[key] === b.materials[key],
    ),
);

interface MeetingContext extends Omit<DetailContext, 'shares'> {
  readonly plan: OpeningPlan;
}

const meetingsOn = remember(
  meetingsOf,
  (a, b) =>
    a.places === b.places &&
    a.habits === b.habits &&
    a.place === b.place &&
    a.plan.glazing.flange === b.plan.glazing.flange &&
    a.magnets === b.magnets &&
    sameHolder(a.materials.holder, b.materials.holder) &&
    a.materials.outside === b.materials.outside &&
    a.materials.inside === b.materials.inside,
);

function marginsOf(
  plan: OpeningPlan,
  context: DetailContext,
): Required<Pick<HoldOpening, 'byPoint' | 'letsGo'>> {
  const { points, panel, place, materials } = context;
  const none = { byPoint: [], letsGo: null };
  const strengths = strengthsAt(plan, context);
  if (!strengths) return none;
  const held = points.map(({ number, kind, centre }, k) => {
    const { x, y } = movePoint(place, centre);
    return { number, kind, x, y, strength: shared(strengths[kind], context.shares[k] ?? 1) };
  });
  const { wind, gustFactor } = plan.choices.weather;
  const load: PanelLoad = {
    ...clothOf(context.habits),
    area: panel.area.value,
    weight: (panel.mass.value / 1000) * GRAVITY,
    openness: materials.fabric.openness,
    wind,
    gustFactor,
  };
  const found = panelMargins(held, load);
  if (!found.ok) return none;
  const { letsGoAt, weakest } = found.value;
  const known = (value: number | string) => (typeof value === 'number' ? value : null);
  return {
    byPoint: found.value.points.map(
      (point): HoldByPoint => ({
        point: point.number,
        mode: point.mode,
        value: known(point.value),
        low: known(point.low),
        high: known(point.high),
        normal: point.normal,
        side: point.side,
        pull: point.pull,
      }),
    ),
    letsGo: { weakest, low: known(letsGoAt.low), high: known(letsGoAt.high) },
  };
}

/** Cloth as the shop states it, or as is usual. */
export const clothOf = ({ slack }: Pick<Catalogue['habits'], 'slack'>): typeof USUAL_CLOTH =>
  slack ? { ...USUAL_CLOTH, slack } : USUAL_CLOTH;

/** Strength at corners and along edges, each across its own gap; null where it has none. */
function strengthsAt(plan: OpeningPlan, context: DetailContext) {
  const { points, panel, materials, habits } = context;
  const friction = frictionOf(habits.friction);
  const { hottest } = plan.choices.weather;
  const run = runOfOne(panel, points.length);
  const strength = (place: 'corner' | 'edge') => {
    const { gap } = sectionsAt(place, plan, context);
    return holdingStrength(materials, { gap, hottest, friction, run });
  };
  const corner = strength('corner');
  if (!corner.ok) return null;
  const edge = strength('edge');
  return edge.ok ? { corner: corner.value, edge: edge.value } : null;
}

/** With a share of its pull, as its neighbours leave it. */
function shared(strength: Strength, share: number): Strength {
  if (share === 1) return strength;
  const times = <T extends { readonly low: Newton; readonly high: Newton }>(range: T): T => ({
    ...range,
    low: newton(range.low * share),
    high: newton(range.high * share),
  });
  const { pull, breakAway } = strength;
  return {
    ...strength,
    pull: { ...times(pull), nominal: newton(pull.nominal * share) },
    breakAway: times(breakAway),
  };
}

/** The stack at the shallowest corner, or the shallowest point along an edge: where the panel stands off the most. */
export function sectionsAt(
  place: 'corner' | 'edge',
  plan: OpeningPlan,
  { points, materials }: Pick<DetailContext, 'points' | 'materials'>,
): StackSection {
  return stackSection(
    {
      ...materials,
      ...behindGlass(materials),
      steel: materials.holder.kind === 'steel',
      glazing: plan.glazing,
      depth: shallowest(points, place),
      pocketDepth: plan.choices.hold.pocket,
    },
    place,
  );
}

/** Least distance of a magnet's middle from the edge: where the panel stands off the most. */
const shallowest = (points: readonly HoldPoint[], kind: 'corner' | 'edge'): number =>
  Math.min(
    ...points
      .filter((point) => point.kind === kind)
      .map(({ centre, edgePoint }) => Math.hypot(centre.x - edgePoint.x, centre.y - edgePoint.y)),
    1e3,
  );

function meetingsOf(glass: Outline, context: MeetingContext, find: Find): readonly HoldMeeting[] {
  const { points, panel, place, materials, habits, magnets, plan } = context;
  const input = {
    room: panel.band ?? panel.finished,
    seam: habits.pocketSeam,
    outside: faceOf(materials.outside),
    ease: EASE,
    glass: moveOutline(invert(place), glass),
    inside: behindGlass(materials).face,
    tapeMargin: habits.tapeMargin ?? TAPE_MARGIN,
    flange: plan.glazing.flange ?? 0,
  };
  const pockets = points.flatMap(({ pocket, edgePoint, inward, number }) =>
    pocket ? [{ pocket, foot: edgePoint, inward, number }] : [],
  );
  const found = meetings(input, pockets);
  const refused = pockets.filter((_, k) => !found[k]!.ok);
  if (refused.length > 0)
    reportApart({ input, refused, panel, opening: plan.opening, habits, magnets }, find);
  return found.map((one, k): HoldMeeting => {
    const point = pockets[k]!.number;
    if (!one.ok) return { point, refusal: one.refusal, at: null, travel: null, region: [] };
    const { at, travel, both } = one.value;
    return { point, refusal: null, at, travel, region: both };
  });
}

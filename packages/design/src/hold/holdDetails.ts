import { invert, moveOutline, movePoint, type Outline, type Rigid } from '@panewright/geometry';
import { usualFriction } from '@panewright/magnets';
import type { Materials } from '../derive/materials.ts';
import { remember } from '../derive/remember.ts';
import type { Catalogue } from '../document/catalogue.ts';
import type { HoldByPoint, HoldMeeting } from '../plan/holdDetail.ts';
import type { HoldOpening, HoldPoint, OpeningPlan, PanelPlan } from '../plan/plan.ts';
import { faceOf } from './faceOf.ts';
import { type PanelLoad, pairStrength, panelMargins, USUAL_CLOTH } from './margins.ts';
import { meetings } from './meeting.ts';
import { stackSection } from './stackSection.ts';

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
}

/** What is known of each hold point on one opening's glass: margin by point, and where its pair can meet. */
export function holdDetails(
  plan: OpeningPlan,
  context: DetailContext,
): Required<Pick<HoldOpening, 'byPoint' | 'letsGo' | 'meetings'>> {
  const meetings = plan.shape ? meetingsOn(plan.shape.outline, context, ignore) : [];
  return { ...margins(plan, context, ignore), meetings };
}

/** Neither stage below finds anything to say. */
const ignore = () => {};

const margins = remember(
  marginsOf,
  (a, b) =>
    a.places === b.places &&
    a.panel === b.panel &&
    a.habits === b.habits &&
    a.place === b.place &&
    (['fabric', 'outside', 'inside', 'tape', 'wrapFilm'] as const).every(
      (key) => a.materials[key] === b.materials[key],
    ),
);

const meetingsOn = remember(
  meetingsOf,
  (a, b) =>
    a.places === b.places &&
    a.habits === b.habits &&
    a.place === b.place &&
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
  const held = points.map(({ number, kind, centre }) => {
    const { x, y } = movePoint(place, centre);
    return { number, kind, x, y, strength: strengths[kind] };
  });
  const { wind, gustFactor } = plan.choices.weather;
  const load: PanelLoad = {
    ...USUAL_CLOTH,
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

/** Strength of the pair at corners and along edges, each across its own gap; null where it has none. */
function strengthsAt(plan: OpeningPlan, { points, materials, habits }: DetailContext) {
  const friction = {
    low: habits.friction,
    high: Math.max(habits.friction, usualFriction('filmOrCoatedFabric', false).high),
  };
  const strength = (place: 'corner' | 'edge') => {
    const { gap } = stackSection(
      {
        ...materials,
        glazing: plan.glazing,
        depth: shallowest(points, place),
        pocketDepth: plan.choices.hold.pocket,
      },
      place,
    );
    const { outside, inside } = materials;
    return pairStrength({ outside, inside, gap, hottest: plan.choices.weather.hottest, friction });
  };
  const corner = strength('corner');
  if (!corner.ok) return null;
  const edge = strength('edge');
  return edge.ok ? { corner: corner.value, edge: edge.value } : null;
}

/** Least distance of a magnet's middle from the edge: where the panel stands off the most. */
const shallowest = (points: readonly HoldPoint[], kind: 'corner' | 'edge'): number =>
  Math.min(
    ...points
      .filter((point) => point.kind === kind)
      .map(({ centre, edgePoint }) => Math.hypot(centre.x - edgePoint.x, centre.y - edgePoint.y)),
    1e3,
  );

function meetingsOf(glass: Outline, context: DetailContext): readonly HoldMeeting[] {
  const { points, panel, place, materials, habits } = context;
  const found = meetings(
    {
      room: panel.band ?? panel.finished,
      seam: habits.pocketSeam,
      outside: faceOf(materials.outside),
      ease: EASE,
      glass: moveOutline(invert(place), glass),
      inside: faceOf(materials.inside),
      tapeMargin: TAPE_MARGIN,
      flange: 0,
    },
    points.map(({ pocket, edgePoint, inward }) => ({ pocket, foot: edgePoint, inward })),
  );
  return found.map((one, k): HoldMeeting => {
    const point = points[k]!.number;
    if (!one.ok) return { point, refusal: one.refusal, at: null, travel: null, region: [] };
    const { at, travel, both } = one.value;
    return { point, refusal: null, at, travel, region: both };
  });
}

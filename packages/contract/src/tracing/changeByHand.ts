import type { OutlineSurvey, SurveySegment } from '@panewright/design';
import {
  arcOf,
  edges,
  moveCorner,
  moveEdge,
  type Outline,
  point,
  type Segment,
  setRadius,
} from '@panewright/geometry';
import { type Millimetre, mm, ok, type Result, refuse } from '@panewright/quantity';
import type { Refusal } from '../refusal.ts';

/** What a person does to a traced outline where they disagree. Edges are counted from 0. */
export type HandChange =
  | { readonly kind: 'edge'; readonly edge: number; readonly outward: Millimetre }
  | { readonly kind: 'radius'; readonly edge: number; readonly radius: Millimetre }
  | {
      readonly kind: 'corner';
      readonly edge: number;
      readonly to: { readonly x: number; readonly y: number };
    };

/** The outline of a survey, as the geometry has it. The survey has segments. */
export function surveyOutline({ segments }: OutlineSurvey): Outline {
  const made = segments.map((segment): Segment => {
    const to = point(segment.to.x, segment.to.y);
    return segment.kind === 'line' ? { kind: 'line', to } : { kind: 'arc', to, bulge: segment.bulge };
  });
  return { segments: made as unknown as Outline['segments'] };
}

const MOST_SIGMA = 100;
const MOST_RADIUS_SIGMA = 10_000;

/**
 * A traced outline with one change by hand. What was moved is marked so, and is known no better than the trace and the
 * hand together: the photo still tells where the film is, the hand where on the photo.
 *
 * @param now the outline as it is, begun from `traced`
 * @param hand mm, one standard deviation of where a hand puts an edge
 * @refuses RESHAPE_REFUSED where its neighbours cannot follow
 */
export function changeByHand(
  now: OutlineSurvey,
  traced: OutlineSurvey,
  change: HandChange,
  hand: number,
): Result<OutlineSurvey, Refusal> {
  const before = surveyOutline(now);
  const changed = reshaped(before, change);
  if (!changed.ok) return refuse({ code: 'RESHAPE_REFUSED', refusal: changed.refusal });
  const touched = (k: number) =>
    k === change.edge || (change.kind === 'corner' && k === (change.edge + 1) % now.segments.length);
  const segments = edges(changed.value).map(({ to, bulge }, k): SurveySegment => {
    const old = now.segments[k]!;
    const known = touched(k)
      ? { sigma: together(traced.segments[k]!.sigma, hand), byHand: true as const }
      : { sigma: old.sigma, ...(old.byHand ? { byHand: old.byHand } : {}) };
    const place = { to: { x: to.x, y: to.y }, ...known };
    if (old.kind === 'line') return { kind: 'line', ...place };
    const radius = arcOf(edges(before)[k]!)?.radius !== arcOf(edges(changed.value)[k]!)?.radius;
    const first = traced.segments[k]!;
    const was = first.kind === 'arc' ? (first.radiusSigma ?? 0) : 0;
    const radiusSigma =
      touched(k) && radius
        ? Math.min(Math.hypot(was, hand * radiusPerMove(changed.value, k)), MOST_RADIUS_SIGMA)
        : old.radiusSigma;
    return { kind: 'arc', ...place, bulge, ...(radiusSigma === undefined ? {} : { radiusSigma }) };
  });
  return ok({ ...now, segments, ...sizes(segments, traced) });
}

function reshaped(outline: Outline, change: HandChange) {
  if (change.kind === 'edge') return moveEdge(outline, change.edge, change.outward);
  if (change.kind === 'radius') return setRadius(outline, change.edge, change.radius);
  return moveCorner(outline, change.edge, change.to);
}

const together = (traced: number, hand: number): number => Math.min(Math.hypot(traced, hand), MOST_SIGMA);

/** How much an arc's radius changes when its middle goes 1 mm aside: a rounding between its sides, a side on its ends. */
function radiusPerMove(outline: Outline, edge: number): number {
  const STEP = 0.05;
  const radius = (of: Outline) => arcOf(edges(of)[edge]!)!.radius;
  const moved = moveEdge(outline, edge, mm(-STEP));
  const change = moved.ok ? Math.abs(radius(moved.value) - radius(outline)) / STEP : 0;
  if (change > 1e-6) return change;
  const { from, to, bulge } = edges(outline)[edge]!;
  const half = Math.hypot(to.x - from.x, to.y - from.y) / 2;
  const rise = half * Math.abs(bulge);
  return Math.abs(rise ** 2 - half ** 2) / (2 * rise ** 2);
}

/** A whole size ends at two edges: with what the hand adds to the two least known. */
function sizes(
  segments: readonly SurveySegment[],
  { segments: first, sizeSigma }: OutlineSurvey,
): Pick<OutlineSurvey, 'sizeSigma'> {
  if (!sizeSigma) return {};
  const added = segments.map(({ sigma }, k) => Math.max(0, sigma ** 2 - first[k]!.sigma ** 2));
  added.sort((a, b) => b - a);
  const hand = Math.sqrt((added[0] ?? 0) + (added[1] ?? 0));
  return {
    sizeSigma: { width: together(sizeSigma.width, hand), height: together(sizeSigma.height, hand) },
  };
}

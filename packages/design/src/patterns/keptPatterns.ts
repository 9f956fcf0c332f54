import {
  type Alignment,
  edges,
  moveOutline,
  type Outline,
  point,
  type Rigid,
  type Segment,
  still,
  validate,
} from '@panewright/geometry';
import { mm } from '@panewright/quantity';
import type { Job, Opening, OutlineSurvey, SurveySegment } from '../document/job.ts';
import type { KeptPattern, PatternMethod } from '../document/keptPattern.ts';
import type { OpeningPlan, OpeningShape, PatternPlan } from '../plan/plan.ts';
import { align, WAYS } from './grouping.ts';

/** What only the one who keeps a pattern knows. */
export interface Keeping {
  readonly id: string;
  readonly name: string;
  readonly notes: string;
  /** The job's newest saved revision, or none. */
  readonly revision: number | null;
  /** ISO 8601, the day. */
  readonly date: string;
}

/**
 * A pattern of a job as it is kept for later ones: its outline, how well each edge is known, and where it came from.
 *
 * @param openings the plan's; the pattern's first opening has to be among them
 */
export function keptPatternOf(
  job: Job,
  openings: readonly OpeningPlan[],
  pattern: PatternPlan,
  { id, name, notes, revision, date }: Keeping,
): KeptPattern {
  const member = pattern.members[0]!.opening;
  const first = job.openings.find((one) => one.id === member)!;
  const { shape } = openings.find(({ opening }) => opening === member)!;
  return {
    format: 'panewright.pattern',
    version: 1,
    ...{ id, name, notes },
    segments: knownSegments(first, shape!, pattern.outline),
    edgeNames: [...pattern.edgeNames],
    sizeSigma: { width: shape!.width.sigma ?? shape!.sigma, height: shape!.height.sigma ?? shape!.sigma },
    from: {
      ...{ job: job.id, jobName: job.name, revision, pattern: pattern.pattern },
      customer: job.customer.name,
      site: { kind: job.site.kind, name: job.site.name },
      openings: pattern.members.map(({ opening, turnedOver }) => {
        const one = job.openings.find((other) => other.id === opening)!;
        return { id: opening, name: one.name, place: one.place, turnedOver };
      }),
      method: methodOf(first),
      date,
    },
  };
}

const methodOf = ({ survey }: Opening): PatternMethod =>
  survey.method === 'outline' ? survey.from.kind : survey.method;

/** Each edge as well known as its survey says; where that speaks of the whole shape alone, as its worst point. */
export function knownSegments(
  { survey }: Opening,
  shape: OpeningShape,
  outline: Outline = shape.outline,
): SurveySegment[] {
  const worst = Math.min(shape.sigma, 100);
  return edges(outline).map(({ to: { x, y }, bulge }, k): SurveySegment => {
    const own = survey.method === 'outline' ? survey.segments[k] : undefined;
    const sigma = own?.sigma ?? worst;
    if (bulge === 0) return { kind: 'line', to: { x, y }, sigma };
    const corner = shape.corners.find(({ name }) => `corner:${name}` === shape.edgeNames[k]);
    const radiusSigma = (own?.kind === 'arc' ? own.radiusSigma : undefined) ?? corner?.radius.sigma;
    const arc = { kind: 'arc' as const, to: { x, y }, bulge, sigma };
    return radiusSigma === undefined ? arc : { ...arc, radiusSigma: Math.min(radiusSigma, 10_000) };
  });
}

/** The outline that surveyed segments make; a refusal where they make none. */
export const outlineOfSegments = (segments: readonly SurveySegment[]): ReturnType<typeof validate> =>
  validate({
    segments: segments.map((segment): Segment => {
      const to = point(segment.to.x, segment.to.y);
      return segment.kind === 'line' ? { kind: 'line', to } : { kind: 'arc', to, bulge: segment.bulge };
    }),
  });

/**
 * The standard deviation of the worst-known edge, mm.
 *
 * @source none: the greatest of the segments' own
 */
export const worstSigma = (segments: readonly SurveySegment[]): number =>
  segments.reduce((worst, { sigma }) => Math.max(worst, sigma), 0);

/** Turns this near to a quarter leave a width a width, or make it a height, radians. */
const SQUARE = 0.02;

/**
 * The survey of an opening that a kept pattern serves.
 *
 * @param place carries the pattern into the opening's frame, turned over where it must be
 */
export function surveyOfKept(kept: KeptPattern, place: Rigid = still): OutlineSurvey {
  const read = outlineOfSegments(kept.segments);
  if (!read.ok) throw new Error(`kept pattern ${kept.id} is no outline: ${read.refusal.code}`);
  const moved = edges(moveOutline(place, read.value));
  const count = moved.length;
  const { width, height } = kept.sizeSigma;
  const quarters = Math.round(place.angle / (Math.PI / 2));
  const square = Math.abs(place.angle - (quarters * Math.PI) / 2) < SQUARE;
  return {
    method: 'outline',
    segments: moved.map(({ to: { x, y }, bulge }, k): SurveySegment => {
      // Turned over, the ring runs the other way.
      const { to: _to, ...known } = kept.segments[place.mirrored ? count - 1 - k : k]!;
      return known.kind === 'line' ? { ...known, to: { x, y } } : { ...known, to: { x, y }, bulge };
    }),
    ...(square
      ? { sizeSigma: quarters % 2 === 0 ? { width, height } : { width: height, height: width } }
      : {}),
    from: {
      kind: 'pattern',
      name: kept.name,
      date: kept.from.date,
      note: '',
      pattern: { id: kept.id, job: kept.from.job, turnedOver: place.mirrored },
    },
  };
}

/** A way that is hardly better is not preferred to one a maker would rather have, mm. */
const HARDLY = 0.05;

/**
 * The best way to lay one outline on another, turned any way and turned over: upright and unturned before others that are
 * hardly better.
 *
 * @param within only a deviation up to this matters, mm
 * @returns deviation in mm
 * @accuracy as `alignOutlines`
 * @source worst deviation after rigid alignment: sources.md#kabsch-1976
 */
export function recognised(kept: Outline, asked: Outline, within: number): Alignment {
  let best: Alignment | undefined;
  for (const way of WAYS) {
    const fit = align(kept, asked, { ...way, within: mm(within) });
    if (!best || fit.deviation < best.deviation - HARDLY) best = fit;
    if (best.deviation < HARDLY) break;
  }
  return best!;
}

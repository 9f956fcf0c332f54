import type { OutlineSurvey, PhotoOrigin } from '@panewright/design';
import { arcOf, edges, type Outline } from '@panewright/geometry';
import type { LineChoice, Paper, Ruler, Tape, TappedLine, Trace, TraceStage } from '@panewright/photo';
import { ok, type Result, refuse } from '@panewright/quantity';
import { sayQuestion } from '../answers/answers.ts';
import type { Refusal } from '../refusal.ts';
import { tracedSurvey } from './tracedSurvey.ts';

/** A line or an arc with its ends, as the truths of reference photos are written. */
export type TracedSegment =
  | { readonly type: 'line'; readonly start: readonly number[]; readonly end: readonly number[] }
  | {
      readonly type: 'arc';
      readonly center: readonly number[];
      readonly radius: number;
      readonly start_angle_deg: number;
      readonly end_angle_deg: number;
      readonly ccw: boolean;
      readonly start: readonly number[];
      readonly end: readonly number[];
    };

export interface TraceReport extends Omit<Trace, 'outline' | 'questions'> {
  readonly outline: { readonly closed: true; readonly segments: readonly TracedSegment[] };
  /** The same outline in the form jobs and plans have. */
  readonly bulges: Outline;
  /** The same as an opening takes it, with how well each part is known. */
  readonly survey: OutlineSurvey;
  readonly questions: readonly (Trace['questions'][number] & { readonly say: string })[];
}

export interface TraceRequest {
  /** Names and bytes of JPEG files: all of one film, lying unmoved, with one lens. */
  readonly photos: readonly { readonly name: string; readonly bytes: Uint8Array }[];
  readonly tapes: readonly Tape[];
  /** What a rule reads on the printed bars. */
  readonly ruler?: Ruler;
  readonly paper?: Paper;
  /** Which of two parallel lines is meant. */
  readonly line?: LineChoice;
  /** The line shown by hand, by points tapped on it in one photo. */
  readonly taps?: TappedLine;
  /** Written with the outline: the day, and what its readings were entered as. */
  readonly date?: string;
  readonly origin?: PhotoOrigin;
  readonly onProgress?: (stage: TraceStage | 'photos' | 'library', photo: number) => void;
  /** Milliseconds, from any start. */
  readonly clock?: () => number;
}

/** Points that enclose something. */
const LEAST_TAPS = 3;

/**
 * The outline of a traced film from its photos, with how well each part of it is known.
 *
 * @refuses taps that enclose nothing, a file that is no JPEG, and all that the tracer refuses
 */
export async function tracePhotoFiles(request: TraceRequest): Promise<Result<TraceReport, Refusal>> {
  const { taps } = request;
  if (taps && (taps.points.length < LEAST_TAPS || !request.photos[taps.photo]))
    return refuse({
      code: 'TAPS_UNUSABLE',
      photo: taps.photo,
      photos: request.photos.length,
      points: taps.points.length,
      least: LEAST_TAPS,
    });
  // Loaded when first asked for: the vision library is thirty times the rest of the program.
  const { decodeJpeg, loadOpenCv, tracePhotos } = await import('@panewright/photo');
  const photos = [];
  for (const [index, { name, bytes }] of request.photos.entries()) {
    request.onProgress?.('photos', index);
    try {
      const { focalLength35, ...image } = decodeJpeg(bytes);
      photos.push({ image, ...(focalLength35 === undefined ? {} : { focalLength35 }) });
    } catch {
      return refuse({ code: 'PHOTO_UNREADABLE', name });
    }
  }
  request.onProgress?.('library', 0);
  const { cv } = await loadOpenCv();
  const traced = tracePhotos({ ...request, cv, photos });
  if (!traced.ok) return refuse({ code: 'TRACE_REFUSED', refusal: traced.refusal });
  const { outline, questions, ...rest } = traced.value;
  return ok({
    outline: { closed: true, segments: segmentsOf(outline) },
    bulges: outline,
    survey: tracedSurvey(traced.value, request),
    ...rest,
    questions: questions.map((question) => ({ ...question, say: sayQuestion(question) })),
  });
}

const degrees = (radians: number) => (radians * 180) / Math.PI;

function segmentsOf(outline: Outline): TracedSegment[] {
  return edges(outline).map((edge) => {
    const [start, end] = [
      [edge.from.x, edge.from.y],
      [edge.to.x, edge.to.y],
    ];
    const arc = arcOf(edge);
    if (!arc) return { type: 'line', start, end };
    return {
      type: 'arc',
      center: [arc.centre.x, arc.centre.y],
      radius: arc.radius,
      start_angle_deg: degrees(arc.start),
      end_angle_deg: degrees(arc.start + arc.sweep),
      ccw: arc.sweep > 0,
      start,
      end,
    };
  });
}

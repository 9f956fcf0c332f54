import type { OutlineSurvey, SurveySegment } from '@panewright/design';
import { arcOf, edges, type Outline } from '@panewright/geometry';
import type { Measure, Paper, Ruler, Tape, Trace, TraceStage } from '@panewright/photo';
import { ok, type Result, refuse } from '@panewright/quantity';
import { sayQuestion } from './answers/answers.ts';
import type { Refusal } from './refusal.ts';

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
  /** `9.1-12.0=1323.9`: from marker 9's corner 1 to marker 12's corner 0, mm. Corners 0 to 3 as the sheets number them. */
  readonly tapes: readonly string[];
  /** `200.18x150.29`: what a rule reads on the printed bars, mm. */
  readonly ruler?: string;
  readonly paper?: Paper;
  readonly onProgress?: (stage: TraceStage | 'photos', photo: number) => void;
  /** Milliseconds, from any start. */
  readonly clock?: () => number;
}

/** Reads `MARKER.CORNER-MARKER.CORNER=MM`. */
export function readTapeText(text: string): Result<Tape, Refusal> {
  const match = /^\s*(\d{1,3})\.(\d)\s*-\s*(\d{1,3})\.(\d)\s*=\s*(\d+(?:\.\d+)?)\s*$/.exec(text);
  if (!match) return refuse({ code: 'TAPE_TEXT_UNREADABLE', text });
  const [, a, b, c, d, length] = match.map(Number);
  return ok({ from: { marker: a!, corner: b! }, to: { marker: c!, corner: d! }, length: length! });
}

/** Reads `XxY`, both in mm. */
export function readRulerText(text: string): Result<Ruler, Refusal> {
  const match = /^\s*(\d+(?:\.\d+)?)\s*[x×]\s*(\d+(?:\.\d+)?)\s*$/.exec(text);
  return match
    ? ok({ x: Number(match[1]), y: Number(match[2]) })
    : refuse({ code: 'RULER_TEXT_UNREADABLE', text });
}

/**
 * The outline of a traced film from its photos, with how well each part of it is known.
 *
 * @refuses a text that cannot be read, a file that is no JPEG, and all that the tracer refuses
 */
export async function tracePhotoFiles(request: TraceRequest): Promise<Result<TraceReport, Refusal>> {
  const tapes: Tape[] = [];
  for (const text of request.tapes) {
    const tape = readTapeText(text);
    if (!tape.ok) return tape;
    tapes.push(tape.value);
  }
  const ruler = request.ruler === undefined ? ok(undefined) : readRulerText(request.ruler);
  if (!ruler.ok) return ruler;
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
  const { cv } = await loadOpenCv();
  const traced = tracePhotos({
    cv,
    photos,
    tapes,
    ...(ruler.value ? { ruler: ruler.value } : {}),
    ...(request.paper ? { paper: request.paper } : {}),
    ...(request.onProgress ? { onProgress: request.onProgress } : {}),
    ...(request.clock ? { clock: request.clock } : {}),
  });
  if (!traced.ok) return refuse({ code: 'TRACE_REFUSED', refusal: traced.refusal });
  const { outline, questions, ...rest } = traced.value;
  return ok({
    outline: { closed: true, segments: segmentsOf(outline) },
    bulges: outline,
    survey: surveyOf(traced.value, request.photos),
    ...rest,
    questions: questions.map((question) => ({ ...question, say: sayQuestion(question) })),
  });
}

/** How far an edge may be said to lie off in a job, mm. */
const MOST_SIGMA = 100;

function surveyOf(traced: Trace, photos: TraceRequest['photos']): OutlineSurvey {
  return {
    method: 'outline',
    segments: edges(traced.outline).map(({ to, bulge }, k): SurveySegment => {
      const { sigma, radius } = traced.edges[k]!;
      const place = { to: { x: to.x, y: to.y }, sigma: Math.min(sigma, MOST_SIGMA) };
      if (bulge === 0) return { kind: 'line', ...place };
      return {
        kind: 'arc',
        ...place,
        bulge,
        ...(radius ? { radiusSigma: Math.min(radius.sigma, 10_000) } : {}),
      };
    }),
    sizeSigma: {
      width: Math.min(traced.width.sigma, MOST_SIGMA),
      height: Math.min(traced.height.sigma, MOST_SIGMA),
    },
    from: {
      kind: 'photo',
      name: photos
        .map(({ name }) => name)
        .join(', ')
        .slice(0, 200),
      date: '',
      note: '',
    },
  };
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

/** What a trace comes to, in a few lines. */
export function traceSummary({
  outline,
  width,
  height,
  edgeSigma,
  questions,
}: TraceReport): readonly string[] {
  const mm = (value: number) => `${value.toFixed(1)} mm`;
  const size = ({ value, interval: [low, high] }: Measure) =>
    `${mm(value)} (95 %: ${mm(low)} to ${mm(high)})`;
  return [
    `${outline.segments.length} lines and arcs, ${size(width)} wide, ${size(height)} high.`,
    `Edge known to ${(1.96 * edgeSigma).toFixed(2)} mm (95 %, estimate).`,
    ...questions.map(({ say }) => say),
  ];
}

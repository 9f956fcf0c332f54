import type { Vector } from '@panewright/geometry';
import { type Millimetre, mm, ok, type Result, refuse } from '@panewright/quantity';
import type { Span } from '../curve/biarc.ts';
import { curveMarkers } from '../curve/curveMarkers.ts';
import type { Chain, EllipseCurve, FileCurve, Piece, Stroke } from '../curve/drawing.ts';
import { fitArcs } from '../curve/fitArcs.ts';
import { type FreeCurve, pointOf, smoothRuns } from '../curve/smoothCurve.ts';
import type { FileNote, FilePlace, FileRefusal } from '../fileRefusal.ts';

/** An ellipse this near a circle, mm, was one before its numbers were rounded. */
const MEANT_ROUND = 1e-3;
/** An arc that rises less, mm, is its chord. */
const FLAT_RISE = 1e-6;
/** No window lies further from the origin of its drawing, mm. */
export const MOST_COORDINATE = 1e7;
export const MOST_PIECES = 20_000;

/** What fitting has cost so far. */
export interface FitTally {
  curves: number;
  arcs: number;
  farthest: number;
}

/**
 * Strokes in mm as chains of lines and arcs: arcs kept, other curves fitted by tangent arcs within `tolerance`.
 *
 * @refuses CURVE_NOT_FITTED, NUMBER_OUT_OF_RANGE (a coordinate beyond 10 km), FILE_TOO_LARGE
 */
export function strokePieces(
  strokes: readonly Stroke[],
  tolerance: Millimetre,
): Result<{ readonly chains: readonly Chain[]; readonly notes: readonly FileNote[] }, FileRefusal> {
  const tally: FitTally = { curves: 0, arcs: 0, farthest: 0 };
  const chains: Chain[] = [];
  let count = 0;
  for (const { curves, place, ...named } of strokes) {
    // Before fitting: what lies out of bounds, or is no number, would never be fitted.
    const beyond = curves.flatMap(reachOf).find((value) => !isUsable(value));
    if (beyond !== undefined)
      return refuse({ code: 'NUMBER_OUT_OF_RANGE', place, what: 'coordinate', value: beyond });
    const spans = spansOf(curves, tolerance, tally);
    if (spans === undefined) return refuse({ code: 'CURVE_NOT_FITTED', place, tolerance });
    const bad = spans.find(({ from, to, bulge }) => ![from.x, from.y, to.x, to.y, bulge].every(isUsable));
    if (bad) return refuse({ code: 'NUMBER_OUT_OF_RANGE', place, what: 'coordinate', value: worstOf(bad) });
    count += spans.length;
    if (count > MOST_PIECES)
      return refuse({ code: 'FILE_TOO_LARGE', what: 'edges', found: count, most: MOST_PIECES });
    if (spans.length > 0) chains.push({ ...named, pieces: spans.map((span) => pieceOf(span, place)) });
  }
  const { farthest, ...counts } = tally;
  const notes: FileNote[] =
    tally.curves > 0 ? [{ code: 'CURVES_FITTED', ...counts, farthest: mm(farthest) }] : [];
  return ok({ chains, notes });
}

function reachOf(curve: FileCurve): readonly number[] {
  const points = curveMarkers(curve).flatMap(({ x, y }) => [x, y]);
  return curve.kind === 'ellipse' ? [...points, curve.u.x, curve.u.y, curve.v.x, curve.v.y] : points;
}

const isUsable = (value: number) => Math.abs(value) <= MOST_COORDINATE;
const worstOf = ({ from, to }: Span) =>
  [from.x, from.y, to.x, to.y].find((value) => !isUsable(value)) ?? MOST_COORDINATE;

function pieceOf({ from, to, bulge }: Span, place: FilePlace): Piece {
  const rise = (Math.abs(bulge) * Math.hypot(to.x - from.x, to.y - from.y)) / 2;
  return { from, to, bulge: rise < FLAT_RISE ? 0 : bulge, place };
}

function spansOf(
  curves: readonly FileCurve[],
  tolerance: number,
  tally: FitTally,
): readonly Span[] | undefined {
  const spans: Span[] = [];
  let free: FreeCurve[] = [];
  const flush = (): boolean => {
    for (const run of smoothRuns(free)) {
      const fit = fitArcs(run, tolerance);
      if (fit === undefined) return false;
      spans.push(...fit.spans);
      // Refused by the caller; the rest need not be fitted.
      if (spans.length > MOST_PIECES) break;
      tally.curves += run.spans;
      tally.arcs += fit.spans.length;
      tally.farthest = Math.max(tally.farthest, fit.farthest);
    }
    free = [];
    return true;
  };
  for (const curve of curves) {
    const plain = plainSpans(curve);
    if (spans.length > MOST_PIECES) break;
    if (plain === undefined) free.push(curve as FreeCurve);
    else if (flush()) spans.push(...plain);
    else return undefined;
  }
  return flush() ? spans : undefined;
}

/** Lines and circular arcs as they are; undefined for what has to be fitted. */
function plainSpans(curve: FileCurve): readonly Span[] | undefined {
  if (curve.kind === 'line') return [{ ...curve, bulge: 0 }];
  if (curve.kind === 'arc') return halves(curve);
  if (curve.kind === 'ellipse') return isRound(curve) ? roundSpans(curve) : undefined;
  return curve.points.length === 2
    ? [{ from: pointOf(curve, 0), to: pointOf(curve, 1), bulge: 0 }]
    : undefined;
}

/** An arc of more than a half turn as two: its bulge would be ill conditioned. */
function halves({ from, to, bulge }: Span): readonly Span[] {
  if (Math.abs(bulge) <= 1) return [{ from, to, bulge }];
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  const middle = { x: (from.x + to.x + bulge * dy) / 2, y: (from.y + to.y - bulge * dx) / 2 };
  const half = Math.tan(Math.atan(bulge) / 2);
  return [
    { from, to: middle, bulge: half },
    { from: middle, to, bulge: half },
  ];
}

/** Half the difference of the axes: the singular values of the matrix of u and v. */
function isRound({ u, v }: EllipseCurve): boolean {
  const sum = Math.hypot(u.x + v.y, u.y - v.x);
  const difference = Math.hypot(u.x - v.y, u.y + v.x);
  return Math.min(sum, difference) / 2 < MEANT_ROUND;
}

function roundSpans(curve: EllipseCurve): readonly Span[] {
  const sweep = curve.end - curve.start;
  const count = Math.max(1, Math.ceil(Math.abs(sweep) / Math.PI - 1e-9));
  const turn = Math.sign(curve.u.x * curve.v.y - curve.u.y * curve.v.x);
  const bulge = turn * Math.tan(sweep / count / 4);
  const points = Array.from({ length: count + 1 }, (_, k) => pointOf(curve, k / count));
  if (Math.abs(Math.abs(sweep) - 2 * Math.PI) < 1e-9) points[count] = points[0]!;
  return points.slice(1).map((to, k): Span => ({ from: points[k]!, to, bulge }));
}

export const isSame = (p: Vector, q: Vector, within: number) => Math.hypot(p.x - q.x, p.y - q.y) <= within;

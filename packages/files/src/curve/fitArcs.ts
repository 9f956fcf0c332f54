import { biarc, distanceFrom, type Span, spanLength } from './biarc.ts';
import type { SmoothCurve } from './smoothCurve.ts';

export interface ArcFit {
  readonly spans: readonly Span[];
  /** Farthest that a point of the curve lies from the arcs, mm. */
  readonly farthest: number;
}

/** Samples of each span of the curve where bends are looked for. */
const LOOKS = 32;
/** Checked points of a stretch, at least, and of each span of the curve in it. */
const LEAST_CHECKS = 24;
/** Between checked points the departure rises by no more than this part. */
const BETWEEN_CHECKS = 1.03;
/** A curve this part of the tolerance from its chord is meant straight. */
const STRAIGHT = 1e-3;
const MOST_HALVINGS = 24;
const MOST_SPANS = 4000;

/**
 * Tangent arcs within `tolerance` of a smooth curve, its ends and its directions there kept. Stretches are shared out so
 * that each bears as much change of curvature (a biarc departs by about its derivative times length cubed), then their
 * number is raised until each is proved to hold; a stretch that does not is halved.
 *
 * @param tolerance mm, above 0
 * @returns undefined where it takes more arcs than any real outline
 * @accuracy departures are measured at 24 points a stretch or more, with 3 % put on
 * @source sources.md#bolton-1975, sources.md#meek-walton-1995
 */
export function fitArcs(curve: SmoothCurve, tolerance: number): ArcFit | undefined {
  const shares = bendShares(curve);
  const most = 16 * curve.spans + 32 * Math.ceil(shares.turn + 1);
  let count = Math.max(1, Math.ceil(shares.turn / (Math.PI / 2) - 1e-9));
  for (;;) {
    const cuts = cutsOf(shares, count, curve.spans);
    const fits = cuts.slice(1).map((end, i) => stretchFit(curve, cuts[i]!, end, tolerance));
    const worst = fits.reduce((far, fit) => Math.max(far, fit.farthest), 0);
    if (worst <= tolerance) return joined(fits);
    if (count >= most) return halved(curve, cuts, tolerance);
    const wanted = 0.95 * count * Math.min(Math.cbrt(worst / tolerance), 2);
    count = Math.min(most, Math.max(count + 1, Math.floor(wanted)));
  }
}

const joined = (fits: readonly ArcFit[]): ArcFit => ({
  spans: fits.flatMap(({ spans }) => spans),
  farthest: fits.reduce((far, fit) => Math.max(far, fit.farthest), 0),
});

interface Shares {
  /** Share of the bend up to each sample, 0 to 1. */
  readonly upTo: readonly number[];
  /** Whole turn, left and right counted alike, radians. */
  readonly turn: number;
}

function bendShares(curve: SmoothCurve): Shares {
  const count = LOOKS * curve.spans;
  const points = Array.from({ length: count + 1 }, (_, i) => curve.point(i / LOOKS));
  const ways = points.map((_, i) => curve.direction(i / LOOKS));
  const lengths = points.slice(1).map((p, i) => Math.hypot(p.x - points[i]!.x, p.y - points[i]!.y));
  const turns = ways.slice(1).map((b, i) => {
    const a = ways[i]!;
    return Math.atan2(a.x * b.y - a.y * b.x, a.x * b.x + a.y * b.y);
  });
  const bends = turns.map((turn, i) => (lengths[i]! > 0 ? turn / lengths[i]! : 0));
  const whole = lengths.reduce((sum, length) => sum + length, 0);
  const weights = bends.map((bend, i) => {
    const change = Math.abs(bend - (bends[i - 1] ?? bend)) + Math.abs((bends[i + 1] ?? bend) - bend);
    return Math.cbrt(change / 2) * lengths[i]! ** (2 / 3);
  });
  const bent = weights.reduce((sum, weight) => sum + weight, 0);
  const upTo = [0];
  weights.forEach((weight, i) => {
    // A tenth goes by length, so that stretches of even bend are cut too.
    const share =
      0.9 * (bent > 0 ? weight / bent : 1 / count) + 0.1 * (whole > 0 ? lengths[i]! / whole : 1 / count);
    upTo.push(upTo[i]! + share);
  });
  return {
    upTo: upTo.map((value) => value / upTo.at(-1)!),
    turn: turns.reduce((sum, t) => sum + Math.abs(t), 0),
  };
}

function cutsOf({ upTo }: Shares, count: number, spans: number): readonly number[] {
  const cuts = [0];
  let i = 0;
  for (let k = 1; k < count; k++) {
    const wanted = k / count;
    while (upTo[i + 1]! < wanted) i++;
    const part = (wanted - upTo[i]!) / (upTo[i + 1]! - upTo[i]!);
    cuts.push((i + part) / LOOKS);
  }
  return [...cuts, spans];
}

/** The line or biarc over a stretch, and how far the curve departs from it; infinite where there is none. */
function stretchFit(curve: SmoothCurve, start: number, end: number, tolerance: number): ArcFit {
  const [from, to] = [curve.point(start), curve.point(end)];
  const line: readonly Span[] = [{ from, to, bulge: 0 }];
  const flat = departure(curve, start, end, line);
  if (flat <= STRAIGHT * tolerance) return { spans: line, farthest: flat };
  const arcs = biarc(from, curve.direction(start), to, curve.direction(end));
  if (arcs === undefined) return { spans: line, farthest: Number.POSITIVE_INFINITY };
  return { spans: arcs, farthest: departure(curve, start, end, arcs) };
}

function departure(curve: SmoothCurve, start: number, end: number, spans: readonly Span[]): number {
  const checks = Math.max(LEAST_CHECKS, Math.ceil(12 * (end - start)));
  let last = spans[0]!.from;
  let [far, way] = [0, 0];
  for (let k = 1; k <= checks; k++) {
    const p = curve.point(start + ((end - start) * k) / checks);
    way += Math.hypot(p.x - last.x, p.y - last.y);
    last = p;
    if (k < checks) far = Math.max(far, Math.min(...spans.map((span) => distanceFrom(span, p))));
  }
  // Arcs much longer or shorter than the curve pass its points and yet do not follow it.
  const length = spans.reduce((sum, span) => sum + spanLength(span), 0);
  return Math.abs(length - way) > 0.05 * way ? Number.POSITIVE_INFINITY : far * BETWEEN_CHECKS;
}

/** Every stretch that does not hold cut in two until it does: what is left after that is nearly straight or a cusp. */
function halved(curve: SmoothCurve, cuts: readonly number[], tolerance: number): ArcFit | undefined {
  const fits: ArcFit[] = [];
  const open = cuts
    .slice(1)
    .map((end, i) => ({ start: cuts[i]!, end, depth: 0 }))
    .reverse();
  while (open.length > 0) {
    const { start, end, depth } = open.pop()!;
    const fit = stretchFit(curve, start, end, tolerance);
    if (fit.farthest <= tolerance) fits.push(fit);
    else if (depth > 4 && straightFit(curve, start, end).farthest <= tolerance)
      fits.push(straightFit(curve, start, end));
    else if (depth >= MOST_HALVINGS || fits.length > MOST_SPANS) return undefined;
    else {
      const middle = (start + end) / 2;
      open.push({ start: middle, end, depth: depth + 1 }, { start, end: middle, depth: depth + 1 });
    }
  }
  return joined(fits);
}

/** The chord: about a cusp, where no biarc follows, a short one holds. */
function straightFit(curve: SmoothCurve, start: number, end: number): ArcFit {
  const chord: Span = { from: curve.point(start), to: curve.point(end), bulge: 0 };
  let far = 0;
  for (let k = 1; k < LEAST_CHECKS; k++)
    far = Math.max(far, distanceFrom(chord, curve.point(start + ((end - start) * k) / LEAST_CHECKS)));
  return { spans: [chord], farthest: far * BETWEEN_CHECKS };
}

import { fitRing, type RingData, type RingFit } from './fitRing.ts';
import { cutIntoPieces } from './pieces.ts';
import type { PlanePoint } from './planeGrid.ts';
import { neighbours, withKind, without } from './ringNeighbours.ts';
import { lengthOf } from './ringShape.ts';
import { startRing, wholeCircle } from './startRing.ts';

/** A side is an arc only when its rise over the chord exceeds this, mm. */
const LEAST_RISE = 1;
/** A path cut into more pieces than this is no pattern: writing, or a grid. */
const MOST_PARTS = 28;
/** Price of a part, in the units of the misfit below. */
const PRICE = { line: 8, arc: 11, bend: 5, sharp: 1 } as const;
/** An arc no longer than this turns a corner; no lens or fold can feign it, so it is cheap, mm. */
const BEND = 60;
/** This near to a sharp corner the ink's own width rounds it, mm. */
const BLUNT = 8;
/** Residuals this small prove nothing: a film that is not quite flat leaves them, mm. */
const FILM = 0.25;

/**
 * Finds how many lines and arcs the ink is made of and fits them: cut the path into pieces, join them, then
 * try every simpler and every richer neighbour of the ring and keep what the evidence pays for.
 *
 * @param path one point a row, even spacing; @param data the measured points, in row order
 * @returns undefined when no ring of at least two parts fits
 * @source sources.md#schwarz-1978 (price of a parameter against the gain in likelihood)
 */
export function chooseRing(
  path: readonly PlanePoint[],
  weights: ArrayLike<number>,
  data: RingData,
): RingFit | undefined {
  const thin = thinned(data, Math.ceil(data.x.length / 700));
  let best: { ring: RingFit; cost: number } | undefined;
  for (const variance of [3, 1]) {
    const pieces = cutIntoPieces(path, weights, { variance, linePrice: 10, arcPrice: 13 });
    if (pieces.length > MOST_PARTS) continue;
    const ring = startRing(thin, path, pieces);
    if (!ring) continue;
    const found = settle(thin, ring);
    if (!best || found.cost < best.cost) best = found;
  }
  const circle = wholeCircle(path, thin);
  const cost = circle && costOf(circle, thin);
  if (circle && (!best || cost! < best.cost)) best = { ring: circle, cost: cost! };
  return best && (fitRing(data, best.ring.parts, 6) ?? fitRing(data, best.ring.parts, 2));
}

/** Every n-th point: enough to choose among rings. */
function thinned(data: RingData, n: number): RingData {
  const some = (values: Float64Array) => values.filter((_, i) => i % n === 0);
  return {
    x: some(data.x),
    y: some(data.y),
    row: some(data.row),
    weight: some(data.weight),
    rows: data.rows,
  };
}

/** Height of an arc over its chord, mm; 0 for a line. */
const rise = (fit: RingFit, p: number) => {
  const from = fit.vertices[p]!;
  const to = fit.vertices[(p + 1) % fit.vertices.length]!;
  const chord = Math.hypot(to.x - from.x, to.y - from.y);
  const k = Math.abs(fit.parts[p]!.primitive.curvature);
  const half = Math.min(1, (k * chord) / 2);
  return k === 0 ? 0 : (1 - Math.sqrt(1 - half * half)) / k;
};

/**
 * Misfit in half log-likelihoods, and the price of the parts. Rows are 2 mm apart and share their error over
 * about 50 mm.
 */
function costOf(fit: RingFit, data: RingData): number {
  const variance = 25 * Math.max(FILM, fit.scale) ** 2;
  const corners = fit.vertices.filter((_, p) => fit.parts[p]!.joint === 'sharp');
  let sum = 0;
  let all = 0;
  for (let i = 0; i < fit.residuals.length; i++) {
    const blunt = corners.some(({ x, y }) => Math.abs(x - data.x[i]!) + Math.abs(y - data.y[i]!) < BLUNT);
    if (!blunt) sum += data.weight[i]! * Math.min(fit.residuals[i]! ** 2, 4);
    all += data.weight[i]!;
  }
  const misfit = (sum * data.rows) / Math.max(1, all) / variance;
  // Comparable between rings although each has its own scale: the logarithm of the likelihood's width.
  const width = (data.rows / 25) * Math.log(Math.max(FILM, fit.scale));
  const parts = fit.parts.reduce((total, part, p) => {
    const kind = part.kind === 'arc' && lengthOf(fit, p) < BEND ? 'bend' : part.kind;
    return total + PRICE[kind] + (part.joint === 'sharp' ? PRICE.sharp : 0);
  }, 0);
  return misfit + width + parts;
}

function settle(data: RingData, start: RingFit): { ring: RingFit; cost: number } {
  let best = { ring: straightened(data, start), cost: 0 };
  best.cost = costOf(best.ring, data);
  for (let round = 0; round < 30; round++) {
    let better: typeof best | undefined;
    for (const parts of neighbours(best.ring, data)) {
      const fit = parts.length >= 2 ? fitRing(data, parts, 4) : undefined;
      if (!fit || tooFlat(fit)) continue;
      const cost = costOf(fit, data);
      if (cost < (better ?? best).cost - 1e-6) better = { ring: fit, cost };
    }
    if (!better) break;
    best = better;
  }
  return best;
}

const tooFlat = (fit: RingFit) =>
  fit.parts.some((part, p) => part.kind === 'arc' && rise(fit, p) < LEAST_RISE);

/** Arcs that hardly rise become lines, flattest first. */
function straightened(data: RingData, start: RingFit): RingFit {
  let ring = start;
  for (;;) {
    const flat = ring.parts
      .map((part, p) => ({ p, rise: part.kind === 'arc' ? rise(ring, p) : Number.POSITIVE_INFINITY }))
      .filter((x) => x.rise < LEAST_RISE)
      .sort((a, b) => a.rise - b.rise)[0];
    if (!flat) return ring;
    const next = fitRing(data, withKind(ring, flat.p, 'line')) ?? fitRing(data, without(ring, flat.p));
    if (!next) return ring;
    ring = next;
  }
}

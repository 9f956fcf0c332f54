import { fitRing, type RingData, type RingFit, type RingPart } from './fitRing.ts';
import { cutIntoPieces, type Piece } from './pieces.ts';
import type { PlanePoint } from './planeGrid.ts';
import { headingNear, offsetFrom, type Primitive } from './primitive.ts';
import { lengthOf } from './ringShape.ts';

/** A side is an arc only when its rise over the chord exceeds this, mm. */
const LEAST_RISE = 1;
/** Below this turn (rad) two parts are taken to meet tangentially. */
const SHARP_TURN = 0.2;
/** Price of a part, in the units of the misfit below. */
const PRICE = { line: 8, arc: 11, bend: 5, sharp: 1 } as const;
/** An arc no longer than this turns a corner; no lens or fold can feign it, so it is cheap, mm. */
const BEND = 60;
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
    const parts = startParts(path, pieces);
    const ring = parts.length >= 2 ? fitRing(thin, parts) : undefined;
    if (!ring) continue;
    const found = settle(thin, ring);
    if (!best || found.cost < best.cost) best = found;
  }
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

/** Primitives of loose pieces, and how they meet. */
function startParts(path: readonly PlanePoint[], pieces: readonly Piece[]): RingPart[] {
  const loose = pieces.map(({ from, to, kind }) => loosePrimitive(path, from, to, kind));
  return pieces.map((piece, p) => {
    const before = (p + pieces.length - 1) % pieces.length;
    const corner = path[piece.from % path.length]!;
    return {
      primitive: loose[p]!,
      kind: piece.kind,
      joint: jointOf(loose[before]!, pieces[before]!.kind, loose[p]!, piece.kind, corner),
      from: piece.from % path.length,
    };
  });
}

function jointOf(
  a: Primitive,
  aKind: string,
  b: Primitive,
  bKind: string,
  at: PlanePoint,
): 'tangent' | 'sharp' {
  if (aKind === 'line' && bKind === 'line') return 'sharp';
  return Math.abs(turnBetween(a, b, at)) < SHARP_TURN ? 'tangent' : 'sharp';
}

function turnBetween(a: Primitive, b: Primitive, { x, y }: PlanePoint): number {
  const turn = headingNear(b, x, y) - headingNear(a, x, y);
  return Math.atan2(Math.sin(turn), Math.cos(turn));
}

/** Least-squares line or circle of a stretch of the path by a few Gauss-Newton steps. */
function loosePrimitive(
  path: readonly PlanePoint[],
  from: number,
  to: number,
  kind: 'line' | 'arc',
): Primitive {
  const at = (row: number) => path[((row % path.length) + path.length) % path.length]!;
  const [p, q] = [at(from), at(to - 1)];
  const middle = at((from + to) >> 1);
  const chord = Math.hypot(q.x - p.x, q.y - p.y) || 1;
  const heading = Math.atan2(q.y - p.y, q.x - p.x);
  const rise = ((q.x - p.x) * (middle.y - p.y) - (q.y - p.y) * (middle.x - p.x)) / chord;
  const curvature = kind === 'line' ? 0 : (-8 * rise) / (chord * chord + 4 * rise * rise);
  return { x: middle.x, y: middle.y, heading, curvature };
}

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
  let sum = 0;
  let all = 0;
  for (let i = 0; i < fit.residuals.length; i++) {
    sum += data.weight[i]! * Math.min(fit.residuals[i]! ** 2, 4);
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

/** Rings one step simpler or richer. */
function* neighbours(ring: RingFit, data: RingData): Generator<RingPart[]> {
  const n = ring.parts.length;
  for (let p = 0; p < n; p++) {
    const part = ring.parts[p]!;
    if (n > 2) yield without(ring, p);
    if (part.kind === 'line') yield withKind(ring, p, 'arc');
    if (part.joint === 'sharp') {
      yield* filleted(ring, p);
      if (part.kind === 'arc' || ring.parts[(p + n - 1) % n]!.kind === 'arc')
        yield withJoint(ring, p, 'tangent');
    }
    if (misfitOf(ring, data, p) > 0.35) yield* split(ring, data, p);
  }
}

const withJoint = (ring: RingFit, p: number, joint: 'tangent' | 'sharp'): RingPart[] =>
  ring.parts.map((part, i) => (i === p ? { ...part, joint } : part));

/** Changes a part's kind; joints that two lines cannot keep become sharp. */
function withKind(ring: RingFit, p: number, kind: 'line' | 'arc'): RingPart[] {
  const bent = kind === 'arc' ? bendOf(ring, p) : 0;
  const parts = ring.parts.map((part, i) =>
    i === p ? { ...part, kind, primitive: { ...part.primitive, curvature: bent } } : part,
  );
  return mended(parts);
}

/** Curvature that a line's own residuals suggest: their mean in the middle against the ends. */
function bendOf(ring: RingFit, p: number): number {
  const from = ring.vertices[p]!;
  const to = ring.vertices[(p + 1) % ring.vertices.length]!;
  const chord = Math.hypot(to.x - from.x, to.y - from.y);
  const own: number[] = [];
  for (let i = 0; i < ring.owner.length; i++) if (ring.owner[i] === p) own.push(ring.residuals[i]!);
  const third = Math.floor(own.length / 3);
  const mean = (a: number, b: number) => own.slice(a, b).reduce((sum, d) => sum + d, 0) / Math.max(1, b - a);
  const bow = mean(third, 2 * third) - (mean(0, third) + mean(2 * third, own.length)) / 2;
  const curvature = (-9 * bow) / Math.max(1, chord * chord);
  return Math.abs(curvature) > 1e-7 ? curvature : 1e-7;
}

function without(ring: RingFit, p: number): RingPart[] {
  const n = ring.parts.length;
  const next = (p + 1) % n;
  const before = (p + n - 1) % n;
  const a = ring.parts[before]!;
  const b = ring.parts[next]!;
  const middle = { x: ring.parts[p]!.primitive.x, y: ring.parts[p]!.primitive.y };
  const from = midRow(ring, p);
  const joint = jointOf(a.primitive, a.kind, b.primitive, b.kind, middle);
  const parts = ring.parts
    .map((part, i) => (i === next ? { ...part, joint, from } : part))
    .filter((_, i) => i !== p);
  const turn = Math.abs(turnBetween(a.primitive, b.primitive, middle));
  const same =
    a.kind === b.kind && turn < 0.03 && Math.abs(offsetFrom(a.primitive, b.primitive.x, b.primitive.y)) < 5;
  // Two pieces of one line or circle: keep one of them.
  return same && n > 3 ? mended(parts.filter((part) => part.primitive !== b.primitive)) : mended(parts);
}

/** Row half way along a part. */
function midRow(ring: RingFit, p: number): number {
  const { from } = ring.parts[p]!;
  const next = ring.parts[(p + 1) % ring.parts.length]!.from;
  const end = next > from ? next : next + ring.rows;
  return ((from + end) / 2) % ring.rows;
}

/** Two lines never meet tangentially. */
function mended(parts: readonly RingPart[]): RingPart[] {
  return parts.map((part, p) => {
    const before = parts[(p + parts.length - 1) % parts.length]!;
    return part.kind === 'line' && before.kind === 'line' ? { ...part, joint: 'sharp' } : part;
  });
}

/** A round corner in place of a sharp one, small or middling. */
function* filleted(ring: RingFit, p: number): Generator<RingPart[]> {
  const n = ring.parts.length;
  const before = ring.parts[(p + n - 1) % n]!;
  const part = ring.parts[p]!;
  const corner = ring.vertices[p]!;
  const turn = turnBetween(before.primitive, part.primitive, corner);
  if (Math.abs(turn) < 0.09) return;
  for (const radius of [8, 25]) {
    const reach = Math.abs(radius * Math.tan(turn / 2));
    const rows = Math.max(2, reach / 2);
    const heading = headingNear(before.primitive, corner.x, corner.y) + turn / 2;
    const depth = radius / Math.cos(turn / 2) - radius;
    const inward = { x: -Math.sin(heading) * Math.sign(turn), y: Math.cos(heading) * Math.sign(turn) };
    const primitive = {
      x: corner.x + depth * inward.x,
      y: corner.y + depth * inward.y,
      heading,
      curvature: Math.sign(turn) / radius,
    };
    const from = (part.from - rows + ring.rows) % ring.rows;
    const fillet: RingPart = { primitive, kind: 'arc', joint: 'tangent', from };
    const later: RingPart = { ...part, joint: 'tangent', from: (part.from + rows) % ring.rows };
    yield [...ring.parts.slice(0, p), fillet, later, ...ring.parts.slice(p + 1)];
  }
}

/** Largest mean residual over about 40 mm of a part, mm. */
function misfitOf(ring: RingFit, data: RingData, p: number): number {
  let [most, sum, count, start] = [0, 0, 0, -1];
  for (let i = 0; i < ring.owner.length; i++) {
    if (ring.owner[i] !== p || data.weight[i] === 0) continue;
    if (start < 0) start = data.row[i]!;
    sum += Math.max(-2, Math.min(2, ring.residuals[i]!));
    count++;
    if (Math.abs(data.row[i]! - start) >= 20) {
      most = Math.max(most, Math.abs(sum / count));
      [sum, count, start] = [0, 0, -1];
    }
  }
  return most;
}

/** A part cut in the middle: line + arc, arc + line, arc + arc. */
function* split(ring: RingFit, data: RingData, p: number): Generator<RingPart[]> {
  const part = ring.parts[p]!;
  const next = ring.parts[(p + 1) % ring.parts.length]!;
  const end = next.from > part.from ? next.from : next.from + data.rows;
  if (end - part.from < 12) return;
  for (const share of [0.3, 0.5, 0.7]) {
    const cut = (part.from + share * (end - part.from)) % data.rows;
    for (const [first, second] of [
      ['arc', 'arc'],
      ['line', 'arc'],
      ['arc', 'line'],
    ] as const) {
      const bent = { ...part.primitive, curvature: part.primitive.curvature || 1e-6 };
      const straight = { ...part.primitive, curvature: 0 };
      const a: RingPart = { ...part, kind: first, primitive: first === 'arc' ? bent : straight };
      const turned = { ...bent, curvature: bent.curvature * 1.3 };
      const b: RingPart = {
        kind: second,
        joint: 'tangent',
        from: cut,
        primitive: second === 'arc' ? turned : straight,
      };
      yield mended([...ring.parts.slice(0, p), a, b, ...ring.parts.slice(p + 1)]);
    }
  }
}

import type { RingData, RingFit, RingPart } from './fitRing.ts';
import { headingNear, offsetFrom } from './primitive.ts';
import { jointOf, turnBetween } from './startRing.ts';

/** Rings one step simpler or richer. */
export function* neighbours(ring: RingFit, data: RingData): Generator<RingPart[]> {
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
export function withKind(ring: RingFit, p: number, kind: 'line' | 'arc'): RingPart[] {
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

export function without(ring: RingFit, p: number): RingPart[] {
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

/** A round corner in place of a sharp one, small to large. */
function* filleted(ring: RingFit, p: number): Generator<RingPart[]> {
  const n = ring.parts.length;
  const before = ring.parts[(p + n - 1) % n]!;
  const part = ring.parts[p]!;
  const corner = ring.vertices[p]!;
  const turn = turnBetween(before.primitive, part.primitive, corner);
  if (Math.abs(turn) < 0.09) return;
  for (const radius of [8, 25, 60, 110]) {
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

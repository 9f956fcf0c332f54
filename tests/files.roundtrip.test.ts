import { readFileSync } from 'node:fs';
import { defaultCatalogue, derive, type Job } from '@panewright/design';
import { laysOf, type PieceDrawing, piecesOf } from '@panewright/drawing';
import { type ReadOutline, readOutlines } from '@panewright/files';
import {
  bounds,
  circle,
  edges,
  moveOutline,
  nearest,
  type Outline,
  point,
  roundedPolygon,
  shiftBy,
  validate,
} from '@panewright/geometry';
import { mm } from '@panewright/quantity';
import { type DxfVersion, layDxf, laySvg, pieceDxf, pieceSvg } from '@panewright/render';
import fc from 'fast-check';
import { expect, test } from 'vitest';

/** Read back within this, mm: the files hold thousandths. */
const WITHIN = 0.001;
const told = { closeWithin: mm(0.01), arcTolerance: mm(0.01) };

const pieceOf = (boundary: Outline, sew: readonly Outline[] = []): PieceDrawing => ({
  ...{ name: 'W1', count: 1, boundary, notches: [boundary.segments[0].to], internal: [], centres: [], sew },
  ...{ grain: { from: point(0, 0), to: point(50, 0) }, annotation: ['W1'] },
});

function outlinesOf(text: string, layers: readonly string[]): readonly ReadOutline[] {
  const read = readOutlines(text, { ...told, layers });
  if (!read.ok) throw new Error(JSON.stringify(read.refusal));
  return read.value.outlines;
}

/** The farthest that places of one outline lie from the other: corners, and seven places along each edge. */
function apart(a: Outline, b: Outline): number {
  const one = (from: Outline, to: Outline) =>
    edges(from).reduce((far, edge) => {
      const places = Array.from({ length: 8 }, (_, k) => along(edge, k / 8));
      return Math.max(far, ...places.map((p) => nearest(to, p).distance));
    }, 0);
  return Math.max(one(a, b), one(b, a));
}

/** A point of an edge: oracle for the arc is the half-angle form of the bulge, without its centre. */
function along({ from, to, bulge }: ReturnType<typeof edges>[number], t: number) {
  if (bulge === 0) return point(from.x + t * (to.x - from.x), from.y + t * (to.y - from.y));
  const half = 2 * Math.atan(bulge);
  const reach = Math.sin(t * half) / Math.sin(half);
  const turn = (1 - t) * half;
  const [dx, dy] = [to.x - from.x, to.y - from.y];
  return point(
    from.x + reach * (dx * Math.cos(turn) + dy * Math.sin(turn)),
    from.y + reach * (dy * Math.cos(turn) - dx * Math.sin(turn)),
  );
}

/** The drawing's place in its SVG file: its upper left corner 10 mm in from the page's. */
const inSvg = (boundary: Outline) => {
  const box = bounds(boundary);
  return (outline: Outline) => moveOutline(shiftBy(10 - box.minX, -10 - box.maxY), outline);
};

const VERSIONS: readonly DxfVersion[] = ['R12', 'AC1015'];

function expectRoundTrip(piece: PieceDrawing): void {
  for (const version of VERSIONS) {
    const text = pieceDxf(piece, { version, centres: 'cross' });
    const [found, ...more] = outlinesOf(text, ['1']);
    expect(more.length).toBe(0);
    expect(apart(found!.outline, piece.boundary)).toBeLessThan(WITHIN);
    if (piece.sew.length > 0) {
      const sewn = outlinesOf(text, ['14']);
      expect(sewn.length).toBe(piece.sew.length);
      sewn.forEach(({ outline }, i) => {
        expect(apart(outline, piece.sew[i]!)).toBeLessThan(WITHIN);
      });
    }
  }
  const [found] = outlinesOf(pieceSvg(piece), ['cut']);
  expect(apart(found!.outline, inSvg(piece.boundary)(piece.boundary))).toBeLessThan(WITHIN);
}

/** Corners round a centre, so that the polygon does not cross itself; each rounded by what its sides allow. */
const shape = fc
  .record({
    corners: fc.array(fc.tuple(fc.integer({ min: 1500, max: 5000 }), fc.integer({ min: 60, max: 100 })), {
      minLength: 3,
      maxLength: 9,
    }),
    rounding: fc.integer({ min: 0, max: 95 }),
  })
  .map(({ corners, rounding }) => {
    const turn = corners.reduce((sum, [, share]) => sum + share, 0);
    let angle = 0;
    const points = corners.map(([reach, share]) => {
      angle += (2 * Math.PI * share) / turn;
      return point((reach / 10) * Math.cos(angle) + 600, (reach / 10) * Math.sin(angle) + 600);
    });
    const side = (i: number) => {
      const [p, q] = [points.at(i % points.length)!, points.at((i + 1) % points.length)!];
      return Math.hypot(q.x - p.x, q.y - p.y);
    };
    const radii = points.map((p, i) => {
      const [a, b] = [points.at(i - 1)!, points[(i + 1) % points.length]!];
      const inner = Math.acos(
        ((a.x - p.x) * (b.x - p.x) + (a.y - p.y) * (b.y - p.y)) / (side(i + points.length - 1) * side(i)),
      );
      return mm(rounding * 0.005 * Math.min(side(i + points.length - 1), side(i)) * Math.tan(inner / 2));
    });
    return roundedPolygon(points, radii);
  });

test('rounded outlines of any shape come back from every file the tool writes', () => {
  let tried = 0;
  fc.assert(
    fc.property(shape, (made) => {
      if (!made.ok || !validate(made.value).ok) return;
      tried++;
      expectRoundTrip(pieceOf(made.value));
    }),
    { numRuns: 40, seed: 11 },
  );
  expect(tried).toBeGreaterThan(20);
});

test('a circle, a stadium and arcs of more than a half turn come back', () => {
  const round = circle(point(300, 300), mm(250));
  if (!round.ok) throw new Error(round.refusal.code);
  expectRoundTrip(pieceOf(round.value));
  const line = (x: number, y: number) => ({ kind: 'line', to: point(x, y) }) as const;
  const arc = (x: number, y: number, bulge: number) => ({ kind: 'arc', to: point(x, y), bulge }) as const;
  expectRoundTrip(pieceOf({ segments: [line(400, 0), arc(400, 200, 1), line(0, 200), arc(0, 0, 1)] }));
  // A keyhole: 300° of a circle, and a slot.
  expectRoundTrip(
    pieceOf({
      segments: [line(100, 0), line(100, 173.2), arc(0, 173.2, Math.tan((300 * Math.PI) / 720)), line(0, 0)],
    }),
  );
  // An S, and arcs a little short of a half turn.
  expectRoundTrip(
    pieceOf({
      segments: [line(600, 0), arc(600, 300, -0.2), arc(300, 300, 0.3), arc(0, 300, -0.3), arc(0, 0, 0.2)],
    }),
  );
  expectRoundTrip(
    pieceOf({
      segments: [line(400, 0), arc(400, 200, Math.tan((0.485 * Math.PI) / 2)), line(0, 200), arc(0, 0, 0.97)],
    }),
  );
});

const job = JSON.parse(readFileSync(new URL('../demo/camper.job.json', import.meta.url), 'utf8')) as Job;
const input = {
  ...{ plan: derive(job, defaultCatalogue, 1), job, catalogue: defaultCatalogue },
  options: {
    ...{ paper: 'a4', units: job.units, date: '2026-11-25', revision: '1', metrics: { width: () => 0.5 } },
    say: () => '',
  },
} as unknown as Parameters<typeof piecesOf>[0];

test('every piece of the demonstration job comes back, boundary and sew lines', () => {
  const pieces = piecesOf(input);
  expect(pieces.length).toBeGreaterThan(5);
  for (const piece of pieces) expectRoundTrip({ ...piece, sew: piece.sew.filter((one) => validate(one).ok) });
});

test('the pieces of a lay come back where they lie on the roll', () => {
  for (const lay of laysOf(input)) {
    const placed = lay.placed.map(({ piece, place }) =>
      moveOutline(place, lay.pieces.find(({ name }) => name === piece)!.boundary),
    );
    for (const version of VERSIONS) {
      const found = outlinesOf(layDxf(lay, { version, centres: 'cross' }), ['1']);
      expect(found.length).toBe(placed.length);
      found.forEach(({ outline }, i) => {
        expect(apart(outline, placed[i]!)).toBeLessThan(WITHIN);
      });
    }
    const read = readOutlines(laySvg(lay), told);
    if (!read.ok) throw new Error(JSON.stringify(read.refusal));
    const cuts = read.value.layers.filter((layer) => /-cut$/.test(layer));
    const found = outlinesOf(laySvg(lay), cuts);
    expect(found.length).toBe(placed.length);
    const down = (one: Outline) => moveOutline(shiftBy(0, -lay.width), one);
    found.forEach(({ outline }, i) => {
      expect(apart(outline, down(placed[i]!))).toBeLessThan(WITHIN);
    });
  }
});

import { patternSheet, type SheetInput } from '@panewright/drawing';
import { nearest, type Outline, point } from '@panewright/geometry';
import { expect, test } from 'vitest';
import { sheetFiles } from './index.ts';
import { demoJob, inputFor, options } from './testing/demo.ts';
import { boxOf, pointOnCurve, type ReadPage, type ReadPoint, readPdf } from './testing/readPdf.ts';

// Oracle throughout: pdf.js reads the file; what it says is held against the plan.
const input: Record<'letter' | 'a4', SheetInput> = {
  letter: inputFor(demoJob, 'letter'),
  a4: inputFor(demoJob, 'a4'),
};
input.a4 = { ...input.a4, options: { ...input.a4.options, units: 'mm' } };

async function read(paper: 'letter' | 'a4', pattern: string) {
  const sheet = patternSheet(input[paper], pattern)!;
  const [pdf] = await sheetFiles(sheet, options);
  return { sheet, pages: (await readPdf(pdf!.bytes)).pages };
}

/** Middles of the ringed crosses: where two 10 mm lines cross. */
function registerMarks(page: ReadPage): readonly ReadPoint[] {
  const lines = page.paths.filter(
    ({ layer, curves }) => layer === 'register' && curves.length === 1 && curves[0]!.straight,
  );
  return lines
    .map(({ curves }) => boxOf(curves))
    .filter((box) => box.maxX - box.minX > 9.9)
    .map((box) => ({ x: (box.minX + box.maxX) / 2, y: (box.minY + box.maxY) / 2 }));
}

interface LaidTile {
  readonly label: string;
  readonly page: ReadPage;
  /** Added to a point of the page to have it where the first tile's paper lies. */
  readonly shift: ReadPoint;
}

/** Lays the tiles out as a person does: each on a neighbour already down, so that the marks of the shared side meet. */
function layTiles(labels: readonly string[], pages: readonly ReadPage[]): readonly LaidTile[] {
  const waiting = labels.map((label, index) => ({ label, page: pages[index]! }));
  const laid: LaidTile[] = [{ ...waiting.shift()!, shift: { x: 0, y: 0 } }];
  while (waiting.length > 0) {
    const before = waiting.length;
    for (const tile of [...waiting]) {
      const shift = laid.map((other) => meet(other, tile)).find((one) => one !== undefined);
      if (shift === undefined) continue;
      laid.push({ ...tile, shift });
      waiting.splice(waiting.indexOf(tile), 1);
    }
    if (waiting.length === before) throw new Error(`Nothing joins ${waiting.map(({ label }) => label)}.`);
  }
  return laid;
}

const place = (label: string) => ({ row: label.charCodeAt(0), column: Number(label.slice(1)) });

function meet(
  down: LaidTile,
  next: { readonly label: string; readonly page: ReadPage },
): ReadPoint | undefined {
  const [a, b] = [place(down.label), place(next.label)];
  const [dc, dr] = [b.column - a.column, a.row - b.row];
  if (Math.abs(dc) + Math.abs(dr) !== 1) return undefined;
  const along = dc !== 0 ? 'x' : 'y';
  const forward = dc + dr > 0;
  const side = (page: ReadPage, far: boolean) => {
    const marks = registerMarks(page);
    const edge = far ? Math.max(...marks.map((m) => m[along])) : Math.min(...marks.map((m) => m[along]));
    const across = along === 'x' ? 'y' : 'x';
    return marks.filter((m) => Math.abs(m[along] - edge) < 0.5).toSorted((p, q) => p[across] - q[across]);
  };
  const [ours, theirs] = [side(down.page, forward), side(next.page, !forward)];
  expect(ours.length).toBe(theirs.length);
  const shifts = ours.map((p, i) => ({
    x: p.x + down.shift.x - theirs[i]!.x,
    y: p.y + down.shift.y - theirs[i]!.y,
  }));
  for (const one of shifts) expect(Math.hypot(one.x - shifts[0]!.x, one.y - shifts[0]!.y)).toBeLessThan(0.01);
  return shifts[0];
}

/** What is seen of the finished edge on a laid tile: its points inside the window. */
function seenOn({ page, shift }: LaidTile): {
  readonly vertices: readonly ReadPoint[];
  readonly samples: readonly ReadPoint[];
} {
  const paths = page.paths.filter(({ layer }) => layer === 'finished');
  const inside = (p: ReadPoint, w: NonNullable<(typeof paths)[number]['window']>) =>
    p.x >= w.minX - 1e-6 && p.x <= w.maxX + 1e-6 && p.y >= w.minY - 1e-6 && p.y <= w.maxY + 1e-6;
  const laid = (p: ReadPoint) => ({ x: p.x + shift.x, y: p.y + shift.y });
  const vertices = paths.flatMap(({ curves, window }) =>
    curves.map(({ points }) => points[3]).filter((p) => inside(p, window!)),
  );
  const samples = paths.flatMap(({ curves, window }) =>
    curves.flatMap((one) =>
      [0.25, 0.5, 0.75].map((t) => pointOnCurve(one, t)).filter((p) => inside(p, window!)),
    ),
  );
  return { vertices: vertices.map(laid), samples: samples.map(laid) };
}

/** The shift that carries the plan's frame onto the laid paper, from one vertex that is seen. */
function frameShift(outline: Outline, seen: readonly ReadPoint[]): ReadPoint {
  const corners = outline.segments.map(({ to }) => to);
  for (const corner of corners)
    for (const p of seen) {
      const shift = { x: p.x - corner.x, y: p.y - corner.y };
      const all = corners.every((c) =>
        seen.some((q) => Math.hypot(q.x - c.x - shift.x, q.y - c.y - shift.y) < 0.1),
      );
      if (all) return shift;
    }
  throw new Error('The tiles together do not show the finished edge.');
}

for (const paper of ['letter', 'a4'] as const)
  test(`laid by their marks, ${paper} tiles show every pattern’s finished edge within 0.01 mm`, async () => {
    const { plan } = input[paper];
    for (const { pattern } of paper === 'letter' ? plan.patterns : plan.patterns.slice(0, 2)) {
      const { sheet, pages } = await read(paper, pattern);
      const tiles = layTiles(
        sheet.pages.slice(1).map(({ label }) => label),
        pages.slice(1),
      );
      const seen = tiles.map(seenOn);
      const outline = plan.panels.find((one) => one.pattern === pattern)!.finished;
      const shift = frameShift(
        outline,
        seen.flatMap(({ vertices }) => vertices),
      );
      const miss = seen
        .flatMap(({ samples, vertices }) => [...samples, ...vertices])
        .map((p) => nearest(outline, point(p.x - shift.x, p.y - shift.y)).distance);
      expect(miss.length).toBeGreaterThan(outline.segments.length);
      expect(Math.max(...miss)).toBeLessThan(0.01);
    }
  });

test('the measuring square of each pattern is 100.000 mm, or 101.600 mm for four inches', async () => {
  for (const [paper, side] of [
    ['a4', 100],
    ['letter', 101.6],
  ] as const) {
    const { pages } = await read(paper, 'P1');
    const squares = pages[0]!.paths.filter(({ layer, curves }) => layer === 'measure' && curves.length === 4);
    expect(squares.length).toBe(1);
    const box = boxOf(squares[0]!.curves);
    expect(box.maxX - box.minX).toBeCloseTo(side, 3);
    expect(box.maxY - box.minY).toBeCloseTo(side, 3);
    const bars = pages[0]!.paths.filter(({ layer, curves }) => layer === 'measure' && curves.length === 1);
    const long = Math.max(...bars.map(({ curves }) => boxOf(curves)).map((one) => one.maxX - one.minX));
    expect(long).toBeCloseTo(paper === 'a4' ? 150 : 152.4, 3);
  }
});

test('each tile has its own check square, and paper of the size named', async () => {
  // ISO 216: A4 is 210 x 297 mm. ANSI A: 8 1/2 x 11 in.
  for (const [paper, sides, square] of [
    ['a4', [210, 297], 10],
    ['letter', [215.9, 279.4], 12.7],
  ] as const) {
    const { pages } = await read(paper, 'P2');
    for (const page of pages)
      expect([page.width, page.height].toSorted((a, b) => a - b)).toEqual(
        sides.map((one) => expect.closeTo(one, 3)),
      );
    for (const page of pages.slice(1)) {
      const squares = page.paths.filter(({ layer, curves }) => layer === 'measure' && curves.length === 4);
      expect(squares.map(({ curves }) => boxOf(curves)).map((box) => box.maxX - box.minX)).toEqual([
        expect.closeTo(square, 3),
      ]);
    }
  }
});

test('a pattern says what it serves, which are turned over, and which face is out', async () => {
  const turned = input.letter.plan.patterns.find(({ members }) =>
    members.some(({ turnedOver }) => turnedOver),
  )!;
  const { pages } = await read('letter', turned.pattern);
  const front = pages[0]!.text;
  for (const { opening, turnedOver } of turned.members) {
    const { name } = demoJob.openings.find(({ id }) => id === opening)!;
    expect(front).toContain(turnedOver ? `${name} (turned over)` : name);
  }
  expect(front).toContain('This side is the outside face.');
});

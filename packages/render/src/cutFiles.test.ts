import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { arcThrough, laysOf, type PieceDrawing, piecesOf } from '@panewright/drawing';
import { moveOutline, movePoint, nearest, type Outline, point } from '@panewright/geometry';
import DxfParser from 'dxf-parser';
import { expect, test } from 'vitest';
import { type DxfVersion, layDxf, laySvg, pieceDxf, pieceSvg } from './index.ts';
import { middleOf, readTraits, type Vertex } from './testing/bulges.ts';
import { demoJob, inputFor } from './testing/demo.ts';

const input = inputFor(demoJob, 'a4');
const pieces = piecesOf(input);
const lays = laysOf(input);
const VERSIONS: readonly DxfVersion[] = ['R12', 'AC1015'];

interface Entity {
  readonly type: string;
  readonly layer: string;
  readonly vertices?: readonly Vertex[];
  readonly position?: Vertex;
  readonly shape?: boolean;
  readonly name?: string;
}
interface Dxf {
  readonly header: Readonly<Record<string, unknown>>;
  readonly entities: readonly Entity[];
  readonly blocks: Readonly<Record<string, { readonly entities: readonly Entity[] }>>;
}
/** Oracle: dxf-parser 1.1.2. */
const parse = (text: string): Dxf => new DxfParser().parseSync(text) as unknown as Dxf;
const blockOf = (file: Dxf, name: string) => file.blocks[name]!.entities;

/** The middle of each edge, arcs included: with the corners it fixes the outline. */
function traits(outline: Outline): readonly Vertex[] {
  let from = outline.segments.at(-1)!.to;
  return outline.segments.flatMap((segment) => {
    const middle = middleOf(from, segment.to, segment.kind === 'arc' ? segment.bulge : 0);
    from = segment.to;
    return [middle, { x: segment.to.x, y: segment.to.y }];
  });
}

function expectSame(read: readonly Vertex[], plan: readonly Vertex[]): void {
  expect(read.length).toBe(plan.length);
  for (const [index, p] of plan.entries())
    expect(Math.hypot(read[index]!.x - p.x, read[index]!.y - p.y)).toBeLessThan(0.01);
}

const onLayer = (entities: readonly Entity[], layer: string, type: string) =>
  entities.filter((one) => one.layer === layer && one.type === type);

for (const version of VERSIONS) {
  const polyline = version === 'R12' ? 'POLYLINE' : 'LWPOLYLINE';

  test(`every piece’s ${version} file read back is the plan’s within 0.01 mm`, () => {
    expect(pieces.length).toBeGreaterThan(5);
    for (const piece of pieces) {
      const file = parse(pieceDxf(piece, { version, centres: 'cross' }));
      const entities = blockOf(file, piece.name.toUpperCase());
      const read = (layer: string) =>
        onLayer(entities, layer, polyline).map(({ vertices }) => readTraits(vertices!));
      const boundary = read('1');
      expect(boundary.length).toBe(1);
      expectSame(boundary[0]!, traits(piece.boundary));
      for (const [layer, outlines] of [
        ['8', piece.internal],
        ['14', piece.sew],
      ] as const) {
        expect(read(layer).length).toBe(outlines.length);
        read(layer).forEach((one, index) => {
          expectSame(one, traits(outlines[index]!));
        });
      }
      expectSame(
        onLayer(entities, '4', 'POINT').map(({ position }) => position!),
        piece.notches,
      );
      expect(file.entities.filter(({ type }) => type === 'INSERT').map(({ name }) => name)).toEqual([
        piece.name.toUpperCase(),
      ]);
      expect(entities.some(({ type }) => type === 'SPLINE')).toBe(false);
    }
  });

  test(`a lay’s ${version} file has every piece where the plan puts it`, () => {
    for (const lay of lays) {
      const file = parse(layDxf(lay, { version, centres: 'cross' }));
      const names = file.entities.filter(({ type }) => type === 'INSERT').map(({ name }) => name!);
      expect(new Set(names).size).toBe(lay.placed.length);
      names.forEach((name, index) => {
        const { piece, place } = lay.placed[index]!;
        const { boundary } = lay.pieces.find((one) => one.name === piece)!;
        const [read] = onLayer(blockOf(file, name), '1', polyline);
        expectSame(readTraits(read!.vertices!), traits(moveOutline(place, boundary)));
      });
      const placed = input.plan.cutting!.lays.find((one) => one.lay === lay.name)!.placements;
      placed.forEach(({ outline }, index) => {
        const [read] = onLayer(blockOf(file, names[index]!), '1', polyline);
        const corners = new Set(outline.segments.map(({ to }) => `${to.x.toFixed(2)} ${to.y.toFixed(2)}`));
        expect(read!.vertices!.filter(({ x, y }) => near(corners, x, y)).length).toBe(read!.vertices!.length);
      });
    }
  });
}

const near = (corners: ReadonlySet<string>, x: number, y: number): boolean =>
  [...corners].some((one) => {
    const [cx, cy] = one.split(' ').map(Number);
    return Math.hypot(cx! - x, cy! - y) < 0.02;
  });

test('units are stated as the format allows, and a bar of 100 mm is drawn', () => {
  const [r12, later] = VERSIONS.map((version) => pieceDxf(pieces[0]!, { version, centres: 'cross' }));
  expect(parse(later!).header.$INSUNITS).toBe(4);
  expect(parse(later!).header.$MEASUREMENT).toBe(1);
  for (const text of [r12!, later!]) {
    expect(text).toContain('units: millimetres');
    const lengths = parse(text)
      .entities.filter(({ type, layer }) => type === 'LINE' && layer === '15')
      .map(({ vertices }) =>
        Math.hypot(vertices![1]!.x - vertices![0]!.x, vertices![1]!.y - vertices![0]!.y),
      );
    expect(Math.max(...lengths)).toBeCloseTo(100, 6);
  }
});

test('the magnets’ centres are drawn, and drilled only where that is asked for', () => {
  const panel = pieces.find(({ centres }) => centres.length > 0)!;
  const drawn = blockOf(
    parse(pieceDxf(panel, { version: 'R12', centres: 'cross' })),
    panel.name.toUpperCase(),
  );
  const drilled = blockOf(
    parse(pieceDxf(panel, { version: 'R12', centres: 'drill' })),
    panel.name.toUpperCase(),
  );
  expect(onLayer(drawn, '13', 'POINT')).toEqual([]);
  expectSame(
    onLayer(drilled, '13', 'POINT').map(({ position }) => position!),
    panel.centres,
  );
});

/** Path data read by the rules of SVG: absolute M, L, A and Z. Arcs by the implementation notes, B.2.4. */
function readPathData(data: string): readonly Vertex[] {
  const found: Vertex[] = [];
  let now: Vertex = { x: 0, y: 0 };
  let start = now;
  for (const [, letter, rest] of data.matchAll(/([MLAZ])([^MLAZ]*)/g)) {
    const n = rest!
      .trim()
      .split(/[\s,]+/)
      .map(Number);
    if (letter === 'M') start = now = { x: n[0]!, y: n[1]! };
    else if (letter === 'Z') {
      if (Math.hypot(now.x - start.x, now.y - start.y) > 1e-9) found.push(middleOf(now, start, 0), start);
    } else {
      const to = letter === 'L' ? { x: n[0]!, y: n[1]! } : { x: n[5]!, y: n[6]! };
      const middle =
        letter === 'L' ? middleOf(now, to, 0) : arcMiddle(now, to, n[0]!, n[3] === 1, n[4] === 1);
      found.push(middle, to);
      now = to;
    }
  }
  return found;
}

function arcMiddle(a: Vertex, b: Vertex, radius: number, large: boolean, sweep: boolean): Vertex {
  const [hx, hy] = [(a.x - b.x) / 2, (a.y - b.y) / 2];
  const half = Math.hypot(hx, hy);
  const r = Math.max(radius, half);
  const factor = ((large === sweep ? -1 : 1) * Math.sqrt(Math.max(0, r * r - half * half))) / half;
  const centre = { x: (a.x + b.x) / 2 + factor * hy, y: (a.y + b.y) / 2 - factor * hx };
  const from = Math.atan2(a.y - centre.y, a.x - centre.x);
  let turn = Math.atan2(b.y - centre.y, b.x - centre.x) - from;
  if (sweep && turn < 0) turn += 2 * Math.PI;
  if (!sweep && turn > 0) turn -= 2 * Math.PI;
  return { x: centre.x + r * Math.cos(from + turn / 2), y: centre.y + r * Math.sin(from + turn / 2) };
}

/** Two ways: everything read lies on the plan's outline, and the plan's corners and middles are all read. */
function expectDrawn(read: readonly Vertex[], plan: Outline, toPlan: (p: Vertex) => Vertex): void {
  const back = read.map(toPlan);
  for (const { x, y } of back) expect(nearest(plan, point(x, y)).distance).toBeLessThan(0.01);
  for (const p of traits(plan))
    expect(Math.min(...back.map(({ x, y }) => Math.hypot(x - p.x, y - p.y)))).toBeLessThan(0.01);
}

function boundsOf({ boundary }: PieceDrawing) {
  // Sampled: independent of the exact box the writer uses.
  const points: Vertex[] = [];
  let from = boundary.segments.at(-1)!.to;
  for (const segment of boundary.segments) {
    points.push(segment.to);
    if (segment.kind === 'arc') {
      const { centre, radius, start, sweep } = arcThrough(from, segment.to, segment.bulge);
      for (let i = 0; i <= 4000; i++) {
        const angle = start + (sweep * i) / 4000;
        points.push({ x: centre.x + radius * Math.cos(angle), y: centre.y + radius * Math.sin(angle) });
      }
    }
    from = segment.to;
  }
  return { minX: Math.min(...points.map(({ x }) => x)), maxY: Math.max(...points.map(({ y }) => y)) };
}

test('every piece’s SVG is in real millimetres and read back is the plan’s within 0.01 mm', () => {
  for (const piece of pieces) {
    const svg = pieceSvg(piece);
    const { minX, maxY } = boundsOf(piece);
    const [, width, height, box] = /width="([\d.]+)mm" height="([\d.]+)mm" viewBox="([^"]+)"/.exec(svg)!;
    expect(box).toBe(`0 0 ${width} ${height}`);
    const group = (name: string) =>
      [
        ...(new RegExp(`<g class="${name}"[^>]*>(.*?)</g>`, 's').exec(svg)?.[1] ?? '').matchAll(
          / d="([^"]+)"/g,
        ),
      ].map(([, d]) => d!);
    for (const [name, outlines] of [
      ['cut', [piece.boundary]],
      ['internal', piece.internal],
      ['sew', piece.sew],
    ] as const) {
      const read = group(name).map(readPathData);
      expect(read.length).toBe(outlines.length);
      read.forEach((one, index) => {
        // y runs down in the file, 10 mm of room around the piece's box.
        expectDrawn(one, outlines[index]!, ({ x, y }) => ({ x: x + minX - 10, y: maxY + 10 - y }));
      });
    }
  }
});

test('a lay’s SVG is as long and as wide as the roll and holds every piece once', () => {
  for (const lay of lays) {
    const svg = laySvg(lay);
    expect(svg).toContain(
      `width="${Number(lay.length.toFixed(3))}mm" height="${Number(lay.width.toFixed(3))}mm"`,
    );
    const cuts = [...svg.matchAll(/<g class="cut"[^>]*>\s*<path d="([^"]+)"/g)].map(([, d]) =>
      readPathData(d!),
    );
    expect(cuts.length).toBe(lay.placed.length);
    cuts.forEach((read, index) => {
      const { piece, place } = lay.placed[index]!;
      const { boundary } = lay.pieces.find((one) => one.name === piece)!;
      expectDrawn(read, moveOutline(place, boundary), ({ x, y }) => ({ x, y: lay.width - y }));
      expect(movePoint(place, boundary.segments[0].to).x).toBeGreaterThan(-0.01);
    });
  }
});

const hasEzdxf = (() => {
  try {
    execFileSync('/usr/bin/python3', ['-c', 'import ezdxf'], { stdio: 'ignore' });
    return true;
  } catch {
    return false;
  }
})();

test.skipIf(!hasEzdxf)('an audit by ezdxf finds no error in any file', () => {
  const folder = mkdtempSync(join(tmpdir(), 'cut-files-'));
  try {
    for (const version of VERSIONS) {
      for (const piece of pieces)
        writeFileSync(
          join(folder, `${piece.name}-${version}.dxf`),
          pieceDxf(piece, { version, centres: 'drill' }),
        );
      for (const lay of lays)
        writeFileSync(
          join(folder, `lay-${lay.name}-${version}.dxf`),
          layDxf(lay, { version, centres: 'cross' }),
        );
    }
    const script = [
      'import ezdxf, glob, sys',
      'for f in sorted(glob.glob(sys.argv[1] + "/*.dxf")):',
      '    d = ezdxf.readfile(f); a = d.audit()',
      '    print(f.rsplit("/", 1)[1], d.dxfversion, d.units, len(a.errors))',
    ].join('\n');
    const lines = execFileSync('/usr/bin/python3', ['-c', script, folder], { encoding: 'utf8' })
      .trim()
      .split('\n');
    expect(lines.length).toBe(2 * (pieces.length + lays.length));
    for (const line of lines) expect(line).toMatch(/R12\.dxf AC1009 \d 0$|AC1015\.dxf AC1015 4 0$/);
  } finally {
    rmSync(folder, { recursive: true });
  }
});

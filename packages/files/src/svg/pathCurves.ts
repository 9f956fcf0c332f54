import type { Vector } from '@panewright/geometry';
import { ok, type Result, refuse } from '@panewright/quantity';
import SvgPath from 'svgpath';
import type { FileCurve } from '../curve/drawing.ts';
import type { FilePlace, FileRefusal } from '../fileRefusal.ts';

const MOST_LETTERS = 4_000_000;

/**
 * The subpaths of path data, each a run of curves; y as in the file. A closed subpath ends with its closing line.
 *
 * @refuses path data that is not well formed to its end: NUMBER_UNREADABLE with the letters about the fault
 * @source sources.md#svg2-paths
 */
export function pathCurves(
  data: string,
  place: FilePlace,
): Result<readonly (readonly FileCurve[])[], FileRefusal> {
  if (data.length > MOST_LETTERS)
    return refuse({ code: 'FILE_TOO_LARGE', what: 'points', found: data.length, most: MOST_LETTERS });
  const path = new SvgPath(data);
  const { err } = path as unknown as { readonly err: string };
  if (err !== '') {
    const at = Number(/at pos (\d+)/.exec(err)?.[1] ?? 0);
    const text = data.slice(Math.max(0, at - 12), at + 12).trim();
    return refuse({ code: 'NUMBER_UNREADABLE', place, what: 'path data', text });
  }
  const subpaths: FileCurve[][] = [];
  let start: Vector = { x: 0, y: 0 };
  let foreign: string | undefined;
  path
    .abs()
    .unshort()
    .iterate((segment, _, x, y) => {
      const [kind, ...n] = segment as unknown as readonly [string, ...number[]];
      const from = { x, y };
      if (kind === 'M') {
        start = { x: n[0]!, y: n[1]! };
        subpaths.push([]);
        return;
      }
      // After a closed subpath, the next may go on without a move: from where that one began.
      if (subpaths.length === 0) subpaths.push([]);
      const curves = segmentCurves(kind, n, from, start);
      if (curves === undefined) foreign ??= kind;
      else subpaths.at(-1)!.push(...curves);
      if (kind === 'Z' || kind === 'z') subpaths.push([]);
    });
  if (foreign !== undefined)
    return refuse({ code: 'NUMBER_UNREADABLE', place, what: 'path data', text: foreign });
  return ok(subpaths.filter((curves) => curves.length > 0));
}

/** Absolute, unshortened segments; undefined for a letter that is no command of SVG. */
function segmentCurves(
  kind: string,
  n: readonly number[],
  from: Vector,
  start: Vector,
): readonly FileCurve[] | undefined {
  const pair = (i: number): Vector => ({ x: n[i]!, y: n[i + 1]! });
  if (kind === 'Z' || kind === 'z') return lineCurves(from, start);
  if (kind === 'L') return lineCurves(from, pair(0));
  if (kind === 'H') return lineCurves(from, { x: n[0]!, y: from.y });
  if (kind === 'V') return lineCurves(from, { x: from.x, y: n[0]! });
  if (kind === 'Q') return [bezier(from, pair(0), pair(2))];
  if (kind === 'C') return [bezier(from, pair(0), pair(2), pair(4))];
  if (kind === 'A') return arcCurves(from, n, pair(5));
  return undefined;
}

const bezier = (...points: readonly Vector[]): FileCurve => ({
  kind: 'bezier',
  points: points.map(({ x, y }) => ({ x, y, w: 1 })),
});

export const lineCurves = (from: Vector, to: Vector): readonly FileCurve[] =>
  from.x === to.x && from.y === to.y ? [] : [{ kind: 'line', from, to }];

/**
 * An elliptical arc from its ends to its centre. Radii too small to reach are scaled up evenly, as the standard says.
 *
 * @source sources.md#svg2-arcs
 */
function arcCurves(from: Vector, n: readonly number[], to: Vector): readonly FileCurve[] {
  let [rx, ry] = [Math.abs(n[0]!), Math.abs(n[1]!)];
  if (rx === 0 || ry === 0) return lineCurves(from, to);
  if (from.x === to.x && from.y === to.y) return [];
  const angle = (n[2]! % 360) * (Math.PI / 180);
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  const [hx, hy] = [(from.x - to.x) / 2, (from.y - to.y) / 2];
  const [px, py] = [(cos * hx + sin * hy) / rx, (cos * hy - sin * hx) / ry];
  const reach = Math.hypot(px, py);
  if (reach > 1) [rx, ry] = [rx * reach, ry * reach];
  // On the unit circle: half the chord is (px, py) over `scale`, the centre lies square to it.
  const scale = Math.max(1, reach);
  const [ux, uy] = [px / scale, py / scale];
  const lift = Math.sqrt(Math.max(0, 1 / (ux * ux + uy * uy) - 1)) * (n[3] === n[4] ? -1 : 1);
  const [cx, cy] = [lift * uy, -lift * ux];
  const begin = Math.atan2(uy - cy, ux - cx);
  const finish = Math.atan2(-uy - cy, -ux - cx);
  let sweep = finish - begin;
  if (n[4] === 1 && sweep <= 0) sweep += 2 * Math.PI;
  if (n[4] !== 1 && sweep >= 0) sweep -= 2 * Math.PI;
  const u = { x: rx * cos, y: rx * sin };
  const v = { x: -ry * sin, y: ry * cos };
  const centre = {
    x: (from.x + to.x) / 2 + u.x * cx + v.x * cy,
    y: (from.y + to.y) / 2 + u.y * cx + v.y * cy,
  };
  return [{ kind: 'ellipse', centre, u, v, start: begin, end: begin + sweep }];
}

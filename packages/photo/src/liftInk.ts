import type { Adjustment } from './adjust.ts';
import { cameraCentre, toPlane } from './camera.ts';
import { filmSurface, heightBy } from './filmSurface.ts';
import type { InkPoint } from './inkCentres.ts';
import { normalsOf } from './inkPath.ts';
import type { PlanePoint } from './planeGrid.ts';

/** Film bends slowly: heights are shared over this many rows either side (2 mm each). */
const WINDOW = 45;
/** Noise of one measured point, mm. */
const NOISE = 0.12;

/**
 * Height of the film along the ink: from the sheets near by, and with two photos or more from parallax. Seen from
 * different sides, a raised line falls on different places of the plane; where that shift has a part across the
 * line, it tells the height. Each point is then put where its ray meets the film at that height.
 *
 * @param heightSigma standard deviation of the height before looking, mm
 * @returns the points moved, in the same order
 * @accuracy with three photos from around, heights to about 0.3 mm on rendered film with waves of 2 mm
 * @source ridge regression on the parallax; elementary geometry of the central projection
 */
export function liftInk(
  points: readonly InkPoint[],
  path: readonly PlanePoint[],
  adjustment: Adjustment,
  heightSigma: number,
): InkPoint[] {
  const surface = filmSurface(adjustment, heightSigma);
  const nodes = surface.nodes(adjustment.unknowns);
  const rules = path.map(({ x, y }) => surface.ruleAt(x, y));
  const { top, bottom } = parallaxSums(points, path, adjustment);
  const heights = path.map((_, row) => {
    const before = heightBy(rules[row]!, nodes);
    const sigma = Math.max(1e-3, heightSigma * rules[row]!.left);
    const ridge = (NOISE / sigma) ** 2;
    let [a, b] = [0, 0];
    for (let k = -WINDOW; k <= WINDOW; k++) {
      const at = (row + k + path.length) % path.length;
      const w = 1 - Math.abs(k) / (WINDOW + 1);
      a += w * (top[at]! - before * bottom[at]!);
      b += w * bottom[at]!;
    }
    return { z: before + a / (b + ridge * 4), zSigma: sigma * Math.sqrt(ridge / (b / 4 + ridge)) };
  });
  const out = new Float64Array(2);
  return points.map((point) => {
    const { z, zSigma } = heights[point.row]!;
    const met = toPlane(adjustment.cameras[point.photo]!, point.px, point.py, z, out);
    return met ? { ...point, x: out[0]!, y: out[1]!, z, zSigma } : point;
  });
}

/** Per row: sums of (offset x gain) and (gain²) about their means over the photos that see the row. */
function parallaxSums(points: readonly InkPoint[], path: readonly PlanePoint[], adjustment: Adjustment) {
  const centres = adjustment.cameras.map(cameraCentre);
  const normals = normalsOf(path);
  const sums = new Float64Array(5 * path.length);
  for (const { x, y, row, photo } of points) {
    const { x: nx, y: ny } = normals[row]!;
    const [cx, cy, cz] = centres[photo]!;
    const gain = ((x - cx) * nx + (y - cy) * ny) / cz;
    const offset = (x - path[row]!.x) * nx + (y - path[row]!.y) * ny;
    const at = 5 * row;
    sums[at]! += 1;
    sums[at + 1]! += gain;
    sums[at + 2]! += offset;
    sums[at + 3]! += gain * gain;
    sums[at + 4]! += gain * offset;
  }
  const top = new Float64Array(path.length);
  const bottom = new Float64Array(path.length);
  for (let row = 0; row < path.length; row++) {
    const [n, g, d, gg, gd] = sums.subarray(5 * row, 5 * row + 5) as unknown as [
      number,
      number,
      number,
      number,
      number,
    ];
    if (n < 2) continue;
    top[row] = gd - (g * d) / n;
    bottom[row] = gg - (g * g) / n;
  }
  return { top, bottom };
}

import {
  bounds,
  mirrorAbout,
  moveOutline,
  movePoint,
  nearest,
  type Point,
  point,
  type Rigid,
} from '@panewright/geometry';
import { radian } from '@panewright/quantity';
import type { KeepOut, Mirrors } from './layout.ts';
import { footOnRun, type Rim, type Run } from './runs.ts';

const NONE: Mirrors = { leftRight: null, topBottom: null };

/** The mirror image top for bottom, about the level line at `y` mm. */
const mirrorLevel = (y: number): Rigid => ({
  angle: radian(Math.PI),
  shift: point(0, 2 * y),
  mirrored: true,
});

/** The mirrors of a panel's shape and every part of them, most first, none last. */
export function mirrorSets(runs: readonly Run[], rim: Rim, alike: number): readonly Mirrors[] {
  const box = bounds(rim.finished);
  const x = (box.minX + box.maxX) / 2;
  const y = (box.minY + box.maxY) / 2;
  const leftRight = isSame(runs, rim, mirrorAbout(x), alike) ? x : null;
  const topBottom = isSame(runs, rim, mirrorLevel(y), alike) ? y : null;
  const sets: Mirrors[] = [{ leftRight, topBottom }];
  if (leftRight !== null && topBottom !== null)
    sets.push({ leftRight, topBottom: null }, { leftRight: null, topBottom });
  if (leftRight !== null || topBottom !== null) sets.push(NONE);
  return sets;
}

/** Whether the mirrored corners fall on corners, and the mirrored middles of the runs on the edge. */
function isSame(runs: readonly Run[], rim: Rim, mirror: Rigid, alike: number): boolean {
  const corners = runs.map(({ from }) => from.at);
  return runs.every((run) => {
    const corner = movePoint(mirror, run.from.at);
    const middle = movePoint(mirror, footOnRun(run, run.length / 2, rim).at);
    return (
      corners.some((other) => apart(other, corner) <= alike) &&
      nearest(rim.finished, middle).distance <= alike
    );
  });
}

const apart = (p: Point, q: Point): number => Math.hypot(p.x - q.x, p.y - q.y);

/** Zones together with their mirror images. */
export function zonesWith(zones: readonly KeepOut[], mirrors: Mirrors): readonly KeepOut[] {
  const motions = motionsOf(mirrors);
  let all = zones;
  for (const motion of motions)
    all = [
      ...all,
      ...all.map((zone) => ({ ...zone, outline: moveOutline(motion, zone.outline), mirrored: true })),
    ];
  return all;
}

const motionsOf = ({ leftRight, topBottom }: Mirrors): readonly Rigid[] => [
  ...(leftRight === null ? [] : [mirrorAbout(leftRight)]),
  ...(topBottom === null ? [] : [mirrorLevel(topBottom)]),
];

/** The runs that each active mirror carries a run onto. */
function imagesOf(runs: readonly Run[], index: number, mirrors: Mirrors, alike: number): readonly number[] {
  const run = runs[index]!;
  return motionsOf(mirrors).flatMap((motion) => {
    const [from, to] = [movePoint(motion, run.to.at), movePoint(motion, run.from.at)];
    const found = runs.findIndex(
      (other) => apart(other.from.at, from) <= alike && apart(other.to.at, to) <= alike,
    );
    return found < 0 ? [] : [found];
  });
}

/** The run a run is the mirror image of: itself, or the first one; null where it has none. */
export function mirrorRun(
  runs: readonly Run[],
  index: number,
  mirrors: Mirrors,
  alike: number,
): number | null {
  const images = imagesOf(runs, index, mirrors, alike);
  if (images.length === 0) return null;
  return images.includes(index) ? index : Math.min(...images);
}

/** The least run each run is carried onto by the mirrors, one after the other. */
export function mirrorClasses(runs: readonly Run[], mirrors: Mirrors, alike: number): readonly number[] {
  const least = runs.map((_, index) => index);
  for (let pass = 0; pass < 2; pass++)
    for (const [index] of runs.entries())
      for (const image of imagesOf(runs, index, mirrors, alike))
        least[index] = least[image] = Math.min(least[index]!, least[image]!);
  return least;
}

import type { AdjustInput } from './adjust.ts';
import { type Layout, PER_PHOTO, PER_SHEET, type PhotoMarkers, SHARED } from './adjustmentLayout.ts';
import { type Camera, toPlane } from './camera.ts';
import { type PlanePose, poseFromPlane, rotationVector } from './pose.ts';
import { BAR_X, BAR_Y } from './reading.ts';
import { MARKERS_PER_SHEET, markerCorner, PAPER, type Paper } from './referenceSheet.ts';

/** Chains the photos through the sheets they share, starting from the photo that shows most markers. */
export function startValues(input: AdjustInput, layout: Layout, focal: number): Float64Array | undefined {
  const { photos, paper } = input;
  const q = new Float64Array(layout.size);
  q[5] = input.ruler ? input.ruler.x / BAR_X : 1;
  q[6] = input.ruler ? input.ruler.y / BAR_Y : 1;
  const known = new Map<number, readonly [number, number, number]>([[layout.sheets[0]!, [0, 0, 0]]]);
  const waiting = new Set(photos.keys());
  while (waiting.size > 0) {
    const next = [...waiting].find((i) => sheetsOf(photos[i]!).some((sheet) => known.has(sheet)));
    if (next === undefined) return undefined;
    waiting.delete(next);
    const photo = photos[next]!;
    writeSheets(q, layout, known);
    const pose = photoPose(photo, q, layout, known, focal);
    if (!pose) return undefined;
    const at = SHARED + PER_SHEET * layout.sheets.length + PER_PHOTO * next;
    q.set(
      [(photo.width - 1) / 2, (photo.height - 1) / 2, ...rotationVector(pose.rotation), ...pose.translation],
      at,
    );
    const camera = layout.camera(q, next);
    for (const sheet of sheetsOf(photo)) {
      const place = known.has(sheet) ? undefined : sheetPlace(photo, camera, sheet, paper);
      if (place) known.set(sheet, place);
    }
  }
  writeSheets(q, layout, known);
  return known.size === layout.sheets.length ? q : undefined;
}

const sheetsOf = ({ markers }: PhotoMarkers) => [
  ...new Set(markers.map((marker) => Math.floor(marker.id / MARKERS_PER_SHEET))),
];

function writeSheets(q: Float64Array, layout: Layout, known: ReadonlyMap<number, readonly number[]>): void {
  layout.sheets.forEach((sheet, i) => {
    const place = known.get(sheet);
    if (place) q.set(place, SHARED + PER_SHEET * i);
  });
}

function photoPose(
  photo: PhotoMarkers,
  q: Float64Array,
  layout: Layout,
  known: ReadonlyMap<number, unknown>,
  focal: number,
): PlanePose | undefined {
  const plane: number[] = [];
  const image: number[] = [];
  const world = new Float64Array(3);
  for (const { id, corners } of photo.markers) {
    if (!known.has(Math.floor(id / MARKERS_PER_SHEET))) continue;
    for (let corner = 0; corner < 4; corner++) {
      layout.corner(q, { marker: id, corner }, world);
      plane.push(world[0]!, world[1]!);
      image.push((corners[corner]!.x - (photo.width - 1) / 2) / focal);
      image.push((corners[corner]!.y - (photo.height - 1) / 2) / focal);
    }
  }
  return poseFromPlane(plane, image);
}

/** Rigid fit of a sheet's corners to where the photo sees them on the plane. */
function sheetPlace(photo: PhotoMarkers, camera: Camera, sheet: number, paper: Paper) {
  const { width, height } = PAPER[paper];
  const out = new Float64Array(2);
  let [n, mx, my, mu, mv] = [0, 0, 0, 0, 0];
  const pairs: number[][] = [];
  for (const { id, corners } of photo.markers) {
    if (Math.floor(id / MARKERS_PER_SHEET) !== sheet) continue;
    for (let corner = 0; corner < 4; corner++) {
      if (!toPlane(camera, corners[corner]!.x, corners[corner]!.y, 0, out)) return undefined;
      const p = markerCorner(paper, id % MARKERS_PER_SHEET, corner);
      const pair = [p.x - width / 2, p.y - height / 2, out[0]!, out[1]!];
      pairs.push(pair);
      n++;
      mu += pair[0]!;
      mv += pair[1]!;
      mx += pair[2]!;
      my += pair[3]!;
    }
  }
  let [dot, cross] = [0, 0];
  for (const [u, v, x, y] of pairs as [number, number, number, number][]) {
    dot += (u - mu / n) * (x - mx / n) + (v - mv / n) * (y - my / n);
    cross += (u - mu / n) * (y - my / n) - (v - mv / n) * (x - mx / n);
  }
  const angle = Math.atan2(cross, dot);
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  return [(mx - cos * mu + sin * mv) / n, (my - sin * mu - cos * mv) / n, angle] as const;
}

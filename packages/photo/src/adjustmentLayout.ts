import { type Camera, rotationOf } from './camera.ts';
import type { SeenMarker } from './detectMarkers.ts';
import type { CornerName } from './reading.ts';
import { MARKERS_PER_SHEET, markerCorner, PAPER, type Paper } from './referenceSheet.ts';

export interface PhotoMarkers {
  readonly width: number;
  readonly height: number;
  /** From the file, mm; left out when it does not say. */
  readonly focalLength35?: number;
  readonly markers: readonly SeenMarker[];
}

/** Where each unknown stands in the vector, and what it means. */
export interface Layout {
  readonly sheets: readonly number[];
  readonly size: number;
  camera(unknowns: Float64Array, photo: number): Camera;
  /** World point of a marker corner; false for a sheet not seen. */
  corner(unknowns: Float64Array, name: CornerName, out: Float64Array): boolean;
  /** A point of a sheet (sheet frame, mm, as printed nominally) in the world plane. */
  onSheet(unknowns: Float64Array, sheet: number, x: number, y: number, out: Float64Array): void;
  readonly printScaleAt: number;
}

/** Shared: log focal, k1, k2, p1, p2, sx, sy, ink gain. */
export const SHARED = 8;
export const PER_SHEET = 6;
export const PER_PHOTO = 8;

/** The unknowns of a job: shared, then six a sheet, then eight a photo. */
export function makeLayout(sheets: readonly number[], photos: number, focal: number, paper: Paper): Layout {
  const { width, height } = PAPER[paper];
  const photoStart = SHARED + PER_SHEET * sheets.length;
  const onSheet = (q: Float64Array, sheet: number, x: number, y: number, out: Float64Array) => {
    const at = SHARED + PER_SHEET * sheets.indexOf(sheet);
    const u = (x - width / 2) * q[5]!;
    const v = (y - height / 2) * q[6]!;
    const cos = Math.cos(q[at + 2]!);
    const sin = Math.sin(q[at + 2]!);
    out[0] = q[at]! + cos * u - sin * v;
    out[1] = q[at + 1]! + sin * u + cos * v;
    out[2] = q[at + 3]! + q[at + 4]! * u + q[at + 5]! * v;
  };
  return {
    sheets,
    size: photoStart + PER_PHOTO * photos,
    printScaleAt: 5,
    camera: (q, photo) => {
      const at = photoStart + PER_PHOTO * photo;
      return {
        focal: focal * Math.exp(q[0]!),
        k1: q[1]!,
        k2: q[2]!,
        p1: q[3]!,
        p2: q[4]!,
        cx: q[at]!,
        cy: q[at + 1]!,
        rotation: rotationOf(q[at + 2]!, q[at + 3]!, q[at + 4]!),
        translation: [q[at + 5]!, q[at + 6]!, q[at + 7]!],
      };
    },
    corner: (q, { marker, corner }, out) => {
      const sheet = Math.floor(marker / MARKERS_PER_SHEET);
      if (!sheets.includes(sheet)) return false;
      const p = markerCorner(paper, marker % MARKERS_PER_SHEET, corner);
      const gain = q[7]!;
      const right = corner === 1 || corner === 2 ? gain : -gain;
      onSheet(q, sheet, p.x + right, p.y + (corner <= 1 ? gain : -gain), out);
      return true;
    },
    onSheet,
  };
}

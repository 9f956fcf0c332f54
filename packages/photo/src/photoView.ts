import { type Point, point } from '@panewright/geometry';
import { type Camera, project, toPlane } from './camera.ts';
import type { GreyImage } from './image.ts';
import type { Frame } from './ringShape.ts';

/**
 * How one photo sees the film: lens and pose about the outline's own frame, in plain numbers, so that it can be sent
 * and kept. A point X of the film (z = 0) is R X + t before the lens.
 */
export interface PhotoView {
  /** Of the picture, upright, px. */
  readonly width: number;
  readonly height: number;
  readonly focal: number;
  readonly centre: readonly [number, number];
  /** k1, k2 (radial) and p1, p2 (tangential). */
  readonly distortion: readonly [number, number, number, number];
  /** Nine numbers, row by row. */
  readonly rotation: readonly number[];
  /** mm. */
  readonly translation: readonly [number, number, number];
}

/** A place in a picture, px; the centre of its top-left pixel is (0, 0), y down. */
export interface Pixel {
  readonly x: number;
  readonly y: number;
}

/** The view of an adjusted camera, moved from the sheets' frame into the outline's. */
export function photoView(camera: Camera, frame: Frame, image: GreyImage): PhotoView {
  const [c, s] = [Math.cos(frame.direction), Math.sin(frame.direction)];
  const R = camera.rotation;
  const row = (k: number) => [c * R[k]! + s * R[k + 1]!, c * R[k + 1]! - s * R[k]!, R[k + 2]!];
  const shift = (k: number) => R[k]! * frame.x + R[k + 1]! * frame.y + camera.translation[k / 3]!;
  return {
    width: image.width,
    height: image.height,
    focal: camera.focal,
    centre: [camera.cx, camera.cy],
    distortion: [camera.k1, camera.k2, camera.p1, camera.p2],
    rotation: [...row(0), ...row(3), ...row(6)],
    translation: [shift(0), shift(3), shift(6)],
  };
}

function cameraOf({ focal, centre, distortion, rotation, translation }: PhotoView): Camera {
  const [cx, cy] = centre;
  const [k1, k2, p1, p2] = distortion;
  return { focal, cx, cy, k1, k2, p1, p2, rotation: Float64Array.from(rotation), translation };
}

/**
 * Where a point of the film is seen.
 *
 * @returns px; undefined for a point behind the camera
 * @accuracy rounding only; lens distortion is included
 * @source sources.md#brown-1971
 */
export function pixelOf(
  view: PhotoView,
  { x, y }: { readonly x: number; readonly y: number },
): Pixel | undefined {
  const out = new Float64Array(2);
  return project(cameraOf(view), x, y, 0, out) ? { x: out[0]!, y: out[1]! } : undefined;
}

/**
 * The point of the film seen at a pixel, mm in the outline's frame.
 *
 * @returns undefined where the ray does not meet the film
 * @accuracy the distortion is undone to 1e-10 of the focal length
 * @source sources.md#brown-1971
 */
export function filmPointAt(view: PhotoView, { x, y }: Pixel): Point | undefined {
  const out = new Float64Array(2);
  return toPlane(cameraOf(view), x, y, 0, out) ? point(out[0]!, out[1]!) : undefined;
}

import { type Camera, project, toPlane } from '../camera.ts';
import { type Draw, smoothNoise } from './draw.ts';
import type { Film, Point } from './film.ts';

/** Height of the film over its plane, mm. */
export type Surface = (x: number, y: number) => number;

export interface Light {
  /** Fall of the light towards one side, share. */
  readonly fall: number;
  readonly direction: number;
  /** Soft-edged shadows: darker within. */
  readonly shadows: readonly {
    readonly at: Point;
    readonly normal: number;
    readonly soft: number;
    readonly dark: number;
  }[];
  /** Bright reflections: ellipses and streaks, added to the grey. */
  readonly glare: readonly {
    readonly at: Point;
    readonly angle: number;
    readonly long: number;
    readonly wide: number;
    readonly strength: number;
  }[];
}

export interface Exposure {
  readonly width: number;
  readonly height: number;
  /** Standard deviation of the lens's blur, px. */
  readonly blur: number;
  /** Standard deviation of the sensor's noise, grey values. */
  readonly noise: number;
}

const MESH = 8;

/** Film points of a coarse mesh of pixels, so that between them two linear steps do. */
function mesh(camera: Camera, surface: Surface, { width, height }: Exposure) {
  const columns = Math.ceil(width / MESH) + 2;
  const rows = Math.ceil(height / MESH) + 2;
  const xs = new Float64Array(columns * rows);
  const ys = new Float64Array(columns * rows);
  const out = new Float64Array(2);
  for (let j = 0, k = 0; j < rows; j++) {
    for (let i = 0; i < columns; i++, k++) {
      let z = 0;
      let met = true;
      for (let step = 0; step < 4 && met; step++) {
        met = toPlane(camera, i * MESH - 0.5, j * MESH - 0.5, z, out);
        z = surface(out[0]!, out[1]!);
      }
      xs[k] = met ? out[0]! : 1e9;
      ys[k] = met ? out[1]! : 1e9;
    }
  }
  return { columns, xs, ys };
}

/** A grey photo of the film: light, lens, blur and noise. Pixel centres at whole numbers. */
export function photograph(
  film: Film,
  surface: Surface,
  camera: Camera,
  light: Light,
  exposure: Exposure,
  random: Draw,
): Uint8Array {
  const { width, height } = exposure;
  const { columns, xs, ys } = mesh(camera, surface, exposure);
  const bare = new Float32Array(width * height);
  const lit = lightField(film, light);
  for (let py = 0; py < height; py++) {
    for (let px = 0; px < width; px++) {
      let sum = 0;
      for (let sub = 0; sub < 4; sub++) {
        // Mesh node (i, j) is the pixel corner (8 i - 1/2, 8 j - 1/2).
        const gx = (px + 0.25 + 0.5 * (sub & 1)) / MESH;
        const gy = (py + 0.25 + 0.5 * (sub >> 1)) / MESH;
        const [i, j] = [gx | 0, gy | 0];
        const [u, v] = [gx - i, gy - j];
        const k = j * columns + i;
        const [a, b, c, d] = [(1 - u) * (1 - v), u * (1 - v), (1 - u) * v, u * v];
        const x = a * xs[k]! + b * xs[k + 1]! + c * xs[k + columns]! + d * xs[k + columns + 1]!;
        const y = a * ys[k]! + b * ys[k + 1]! + c * ys[k + columns]! + d * ys[k + columns + 1]!;
        sum += greyAt(film, x, y) * lit.factor(x, y) + lit.added(x, y);
      }
      bare[py * width + px] = Math.min(262, sum / 4);
    }
  }
  return developed(bare, exposure, random);
}

function greyAt({ x: x0, y: y0, step, columns, rows, grey }: Film, x: number, y: number): number {
  const u = (x - x0) / step;
  const v = (y - y0) / step;
  if (!(u >= 0 && v >= 0 && u < columns - 1 && v < rows - 1)) return 130;
  const [i, j] = [u | 0, v | 0];
  const [a, b] = [u - i, v - j];
  const k = j * columns + i;
  const low = grey[k]! + a * (grey[k + 1]! - grey[k]!);
  const high = grey[k + columns]! + a * (grey[k + columns + 1]! - grey[k + columns]!);
  return low + b * (high - low);
}

/** Light on cells of 4 mm, blended between them: it changes slowly. */
function lightField(film: Film, light: Light) {
  const step = 4;
  const columns = Math.ceil((film.columns * film.step) / step) + 2;
  const rows = Math.ceil((film.rows * film.step) / step) + 2;
  const factor = new Float32Array(columns * rows);
  const added = new Float32Array(columns * rows);
  for (let j = 0, k = 0; j < rows; j++) {
    for (let i = 0; i < columns; i++, k++) {
      const [x, y] = [film.x + i * step, film.y + j * step];
      factor[k] = factorAt(light, x, y);
      added[k] = addedAt(light, x, y);
    }
  }
  const blend = (field: Float32Array) => (x: number, y: number) => {
    const u = Math.min(columns - 1.001, Math.max(0, (x - film.x) / step));
    const v = Math.min(rows - 1.001, Math.max(0, (y - film.y) / step));
    const [i, j] = [u | 0, v | 0];
    const k = j * columns + i;
    const low = field[k]! + (u - i) * (field[k + 1]! - field[k]!);
    return (
      low + (v - j) * (field[k + columns]! + (u - i) * (field[k + columns + 1]! - field[k + columns]!) - low)
    );
  };
  return { factor: blend(factor), added: blend(added) };
}

function factorAt({ fall, direction, shadows }: Light, x: number, y: number): number {
  let factor = 1 - (fall * (x * Math.cos(direction) + y * Math.sin(direction))) / 800;
  for (const { at, normal, soft, dark } of shadows) {
    const d = (x - at.x) * Math.cos(normal) + (y - at.y) * Math.sin(normal);
    factor *= 1 - dark / (1 + Math.exp(-d / soft));
  }
  return Math.max(0.25, factor);
}

function addedAt({ glare }: Light, x: number, y: number): number {
  let sum = 0;
  for (const { at, angle, long, wide, strength } of glare) {
    const [c, s] = [Math.cos(angle), Math.sin(angle)];
    const u = (c * (x - at.x) + s * (y - at.y)) / long;
    const v = (-s * (x - at.x) + c * (y - at.y)) / wide;
    const r = u * u + v * v;
    if (r < 9) sum += strength * Math.exp(-r);
  }
  return sum;
}

function developed(bare: Float32Array, { width, height, blur, noise }: Exposure, random: Draw): Uint8Array {
  const soft = blurred(blurred(bare, width, height, blur, 1), width, height, blur, width);
  const grain = smoothNoise(random);
  const out = new Uint8Array(soft.length);
  // Two uniform draws make a triangular noise of standard deviation 1 when spread over sqrt(6).
  const spread = noise * Math.sqrt(6);
  for (let k = 0; k < out.length; k++) {
    const one = random.between(-0.5, 0.5) + random.between(-0.5, 0.5);
    const coarse = noise * 1.2 * (grain((k % width) / 1.7, Math.floor(k / width) / 1.7) - 0.5);
    out[k] = Math.min(255, Math.max(0, Math.round(soft[k]! + spread * one + coarse)));
  }
  return out;
}

/** One pass of a Gaussian along rows (stride 1) or columns. */
function blurred(
  from: Float32Array,
  width: number,
  height: number,
  sigma: number,
  stride: number,
): Float32Array {
  const reach = Math.max(1, Math.ceil(2.5 * sigma));
  const kernel = Array.from({ length: 2 * reach + 1 }, (_, k) => Math.exp(-0.5 * ((k - reach) / sigma) ** 2));
  const total = kernel.reduce((sum, value) => sum + value, 0);
  const out = new Float32Array(from.length);
  const last = stride === 1 ? width - 1 : height - 1;
  for (let j = 0; j < height; j++) {
    for (let i = 0; i < width; i++) {
      const at = stride === 1 ? i : j;
      const k = j * width + i;
      let sum = 0;
      for (let d = -reach; d <= reach; d++) {
        const b = Math.min(last, Math.max(0, at + d));
        sum += kernel[d + reach]! * from[k + (b - at) * stride]!;
      }
      out[k] = sum / total;
    }
  }
  return out;
}

/** Whether all points of the film fall inside the frame, `margin` px from its edge. */
export function inFrame(
  camera: Camera,
  points: readonly Point[],
  { width, height }: Exposure,
  margin: number,
): boolean {
  const pixel = new Float64Array(2);
  return points.every(
    ({ x, y }) =>
      project(camera, x, y, 0, pixel) &&
      pixel[0]! > margin &&
      pixel[1]! > margin &&
      pixel[0]! < width - margin &&
      pixel[1]! < height - margin,
  );
}

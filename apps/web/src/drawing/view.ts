import { bounds, type Outline } from '../contract.ts';

export interface Box {
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}

export interface XY {
  readonly x: number;
  readonly y: number;
}

/** The one place where millimetres with y up become dots with y down. */
export interface View {
  readonly width: number;
  readonly height: number;
  /** Dots per millimetre. */
  readonly scale: number;
  /** SVG transform of the group that is drawn in millimetres. */
  readonly world: string;
  readonly at: (point: XY) => XY;
  readonly box: Box;
}

export interface Padding {
  readonly x: number;
  readonly top: number;
  readonly bottom: number;
}

export function fitView(box: Box, width: number, height: number, pad: Padding): View {
  const wide = Math.max(1, box.maxX - box.minX);
  const high = Math.max(1, box.maxY - box.minY);
  const scale = Math.max(1e-6, Math.min((width - 2 * pad.x) / wide, (height - pad.top - pad.bottom) / high));
  const dx = (width - wide * scale) / 2 - box.minX * scale;
  const dy = pad.top + (height - pad.top - pad.bottom + high * scale) / 2 + box.minY * scale;
  return {
    width,
    height,
    scale,
    world: `matrix(${scale} 0 0 ${-scale} ${dx} ${dy})`,
    at: ({ x, y }) => ({ x: dx + x * scale, y: dy - y * scale }),
    box,
  };
}

/** The box around several outlines. */
export function boxAround(outlines: readonly Outline[]): Box {
  const box = { minX: Infinity, minY: Infinity, maxX: -Infinity, maxY: -Infinity };
  for (const outline of outlines) {
    const one = bounds(outline);
    box.minX = Math.min(box.minX, one.minX);
    box.minY = Math.min(box.minY, one.minY);
    box.maxX = Math.max(box.maxX, one.maxX);
    box.maxY = Math.max(box.maxY, one.maxY);
  }
  return box;
}

/** Part of the way from one point to another. */
export const between = (a: XY, b: XY, t: number): XY => ({
  x: a.x + (b.x - a.x) * t,
  y: a.y + (b.y - a.y) * t,
});

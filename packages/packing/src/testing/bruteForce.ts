/**
 * Least length for rectangles with whole sides, by trying every whole place: nothing of the engine's.
 *
 * @param reserved cells [x0, y0, x1, y1] that stay free
 */
export function bruteForce(
  width: number,
  rects: readonly (readonly [number, number])[],
  reserved?: readonly [number, number, number, number],
): number {
  let best = (reserved?.[2] ?? 0) + rects.reduce((sum, [l, w]) => sum + Math.max(l, w), 0);
  const grid = Array.from({ length: best }, () => new Uint8Array(width));
  const fits = (x: number, y: number, l: number, w: number) => {
    for (let i = x; i < x + l; i++) for (let j = y; j < y + w; j++) if (grid[i]![j]) return false;
    return true;
  };
  const fill = (x: number, y: number, l: number, w: number, value: number) => {
    for (let i = x; i < x + l; i++) grid[i]!.fill(value, y, y + w);
  };
  const place = (k: number, length: number): void => {
    if (length >= best) return;
    if (k === rects.length) {
      best = length;
      return;
    }
    for (const [l, w] of [rects[k]!, [rects[k]![1], rects[k]![0]] as const])
      for (let x = 0; x + l < best; x++)
        for (let y = 0; y + w <= width; y++) {
          if (!fits(x, y, l, w)) continue;
          fill(x, y, l, w, 1);
          place(k + 1, Math.max(length, x + l));
          fill(x, y, l, w, 0);
        }
  };
  if (reserved) fill(reserved[0], reserved[1], reserved[2] - reserved[0], reserved[3] - reserved[1], 1);
  place(0, 0);
  return best;
}

import type { Instance } from '@panewright/packing';

interface Box {
  readonly x: number;
  readonly y: number;
  readonly length: number;
  readonly width: number;
}

/**
 * What a maker gets without a search: every piece as its upright box, longest side first, each box at the leftmost,
 * then lowest free corner, turned the way that ends sooner. Length of the strip it takes, in the instance's unit.
 */
export function boxLay({ stripWidth, pieces }: Instance): number {
  const wanted = pieces
    .flatMap((piece) => {
      const turns = piece.allowedRotationsDeg.map((degrees) => boxOf(piece.polygon, degrees));
      return Array.from({ length: piece.demand }, () => turns);
    })
    .sort((a, b) => longest(b) - longest(a));
  const laid: Box[] = [];
  for (const turns of wanted) {
    const spots = turns
      .filter(({ width }) => width <= stripWidth)
      .map((size) => ({ ...size, ...cornerFor(size, laid, stripWidth) }));
    laid.push(spots.reduce((least, spot) => (spot.x + spot.length < least.x + least.length ? spot : least)));
  }
  return Math.max(...laid.map(({ x, length }) => x + length));
}

const longest = (turns: readonly { readonly length: number; readonly width: number }[]) =>
  Math.max(...turns.map(({ length, width }) => Math.max(length, width)));

function boxOf(polygon: Instance['pieces'][number]['polygon'], degrees: number) {
  const [c, s] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
  const xs = polygon.map(([x, y]) => c * x - s * y);
  const ys = polygon.map(([x, y]) => s * x + c * y);
  const extent = (list: readonly number[]) => Number((Math.max(...list) - Math.min(...list)).toPrecision(12));
  return { length: extent(xs), width: extent(ys) };
}

/** Leftmost, then lowest, of the corners that the laid boxes make. */
function cornerFor(size: { length: number; width: number }, laid: readonly Box[], stripWidth: number) {
  const xs = [0, ...laid.map(({ x, length }) => x + length)].sort((a, b) => a - b);
  const ys = [0, ...laid.map(({ y, width }) => y + width)].sort((a, b) => a - b);
  for (const x of xs)
    for (const y of ys) {
      if (y + size.width > stripWidth) continue;
      const clear = laid.every(
        (box) =>
          box.x + box.length <= x ||
          x + size.length <= box.x ||
          box.y + box.width <= y ||
          y + size.width <= box.y,
      );
      if (clear) return { x, y };
    }
  throw new Error('past the last box there is always room');
}

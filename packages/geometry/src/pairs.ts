import { type Box, boxOf, type Curve } from './curve.ts';

/**
 * Calls `visit` once for every two curves whose boxes, grown by `margin` mm, meet. Sweep in x with the open boxes
 * kept in a list: near n log n for outlines, whose edges are short beside the whole.
 */
export function eachNearPair(
  curves: readonly Curve[],
  margin: number,
  visit: (i: number, j: number) => void,
): void {
  const boxes = curves.map(boxOf);
  const order = boxes.map((_, i) => i).sort((i, j) => boxes[i]!.minX - boxes[j]!.minX || i - j);
  let open: number[] = [];
  for (const i of order) {
    const box = boxes[i]!;
    open = open.filter((j) => boxes[j]!.maxX >= box.minX - margin);
    for (const j of open) if (meetInY(boxes[j]!, box, margin)) visit(Math.min(i, j), Math.max(i, j));
    open.push(i);
  }
}

const meetInY = (a: Box, b: Box, margin: number) => a.minY <= b.maxY + margin && b.minY <= a.maxY + margin;

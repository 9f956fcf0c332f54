/** A corner of a polyline as a DXF file has it: `bulge` is of the edge that begins there. */
export interface Vertex {
  readonly x: number;
  readonly y: number;
  readonly bulge?: number;
}

/** Oracle for an arc: its height over the chord is bulge times half the chord, to the right of the way (DXF reference, code 42). */
export function middleOf(a: Vertex, b: Vertex, bulge: number): Vertex {
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  return { x: (a.x + b.x) / 2 + (bulge * dy) / 2, y: (a.y + b.y) / 2 - (bulge * dx) / 2 };
}

/** Of a closed polyline the middle and the end of each edge, arcs included: together they fix the outline. */
export const readTraits = (vertices: readonly Vertex[]): readonly Vertex[] =>
  vertices.flatMap((one, index) => {
    const next = vertices[(index + 1) % vertices.length]!;
    return [middleOf(one, next, one.bulge ?? 0), { x: next.x, y: next.y }];
  });

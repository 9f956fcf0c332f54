export type XY = readonly [number, number];

/**
 * `from` moved and turned onto `to` by least squares: centroids, then the angle from summed dot and cross products.
 *
 * @source closed form of the plane rigid fit; checked in the network tests against the handbook's turned square
 */
export function rigidOnto(from: readonly XY[], to: readonly XY[]): XY[] {
  const centre = (points: readonly XY[]) =>
    [0, 1].map((i) => points.reduce((sum, point) => sum + point[i]!, 0) / points.length);
  const [c, g] = [centre(from), centre(to)] as [number[], number[]];
  let [dot, cross] = [0, 0];
  from.forEach(([x, y], k) => {
    const [a, b, u, v] = [x - c[0]!, y - c[1]!, to[k]![0] - g[0]!, to[k]![1] - g[1]!];
    dot += a * u + b * v;
    cross += a * v - b * u;
  });
  const angle = Math.atan2(cross, dot);
  return from.map(([x, y]) => [
    g[0]! + Math.cos(angle) * (x - c[0]!) - Math.sin(angle) * (y - c[1]!),
    g[1]! + Math.sin(angle) * (x - c[0]!) + Math.cos(angle) * (y - c[1]!),
  ]);
}

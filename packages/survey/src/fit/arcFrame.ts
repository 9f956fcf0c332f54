/**
 * One edge of a chain: it starts at (x, y) with a heading and runs `length` mm at a constant curvature (1/mm, left
 * positive, 0 for a straight line).
 */
export interface Edge {
  readonly x: number;
  readonly y: number;
  readonly heading: number;
  readonly length: number;
  readonly curvature: number;
}

/** Where an edge ends. */
export interface State {
  readonly x: number;
  readonly y: number;
  readonly heading: number;
}

/** sin φ / φ and (1 − cos φ) / φ with their derivatives, from series near 0. */
export function turnRatios(angle: number) {
  if (Math.abs(angle) < 1e-3) {
    const square = angle * angle;
    return {
      along: 1 - square / 6,
      across: angle / 2 - (angle * square) / 24,
      alongSlope: -angle / 3,
      acrossSlope: 1 / 2 - square / 8,
    };
  }
  const [sin, cos] = [Math.sin(angle), Math.cos(angle)];
  const [along, across] = [sin / angle, (1 - cos) / angle];
  return { along, across, alongSlope: (cos - along) / angle, acrossSlope: (sin - across) / angle };
}

export function endOf({ x, y, heading, length, curvature }: Edge): State {
  const { along, across } = turnRatios(curvature * length);
  const [cos, sin] = [Math.cos(heading), Math.sin(heading)];
  return {
    x: x + length * (cos * along - sin * across),
    y: y + length * (sin * along + cos * across),
    heading: heading + curvature * length,
  };
}

/**
 * Signed distance of a point from the whole line or circle an edge lies on, left positive, in the edge's own frame:
 * `u` along the start's heading, `v` to the left. Stable as the curvature goes to 0.
 *
 * @source elementary: (1 − κd)² = (κu)² + (1 − κv)², solved for d without cancellation
 */
export function signedDistance(u: number, v: number, curvature: number): number {
  const doubled = 2 * v - curvature * (u * u + v * v);
  return doubled / (1 + Math.sqrt(Math.max(1 - curvature * doubled, 0)));
}

/** Distance along the edge from its start to the foot of the point; may lie outside 0 to length. */
export function footAlong(edge: Edge, u: number, v: number): number {
  const { curvature, length } = edge;
  if (Math.abs(curvature) < 1e-9) return u;
  const along = Math.atan2(curvature * u, 1 - curvature * v) / curvature;
  const round = (2 * Math.PI) / Math.abs(curvature);
  return along < -(round - length) / 2 ? along + round : along;
}

/** Distance from a point to the edge as far as it goes, mm. */
export function edgeDistance(edge: Edge, px: number, py: number): number {
  const [dx, dy] = [px - edge.x, py - edge.y];
  const [cos, sin] = [Math.cos(edge.heading), Math.sin(edge.heading)];
  const [u, v] = [cos * dx + sin * dy, cos * dy - sin * dx];
  const along = footAlong(edge, u, v);
  if (along < 0) return Math.hypot(dx, dy);
  if (along <= edge.length) return Math.abs(signedDistance(u, v, edge.curvature));
  const end = endOf(edge);
  return Math.hypot(px - end.x, py - end.y);
}

import { stretchedSag, tensionAt } from '../edge/sag.ts';
import type { HoldPanel } from './holdPanel.ts';

/** Which ends of the figures are taken: strong loads against weak points, or the other way. */
type Side = 'worst' | 'best';

/** How a point lies among its neighbours. */
export interface Lie {
  /** Its part of the panel. */
  readonly share: number;
  /** Depth of the strip an edge carries: area over the run round all points. */
  readonly depth: number;
  /** To each neighbour: unit vector and distance. */
  readonly edges: readonly { readonly x: number; readonly y: number; readonly span: number }[];
}

export interface Demand {
  /** Off the glass, N. */
  readonly normal: number;
  /** Along the glass, N. */
  readonly side: number;
}

/** Of every point of a panel, in their order. */
export function liesOf({ points, area }: HoldPanel): readonly Lie[] {
  const count = points.length;
  const spans = points.map((here, i) => {
    const next = points[(i + 1) % count]!;
    return Math.hypot(next.x - here.x, next.y - here.y);
  });
  const run = spans.reduce((sum, span) => sum + span, 0);
  const toward = (from: number, to: number, span: number) => ({
    x: (points[to]!.x - points[from]!.x) / span,
    y: (points[to]!.y - points[from]!.y) / span,
    span,
  });
  return points.map((_, at) => {
    const before = (at + count - 1) % count;
    const edges = [toward(at, before, spans[before]!), toward(at, (at + 1) % count, spans[at]!)];
    return { share: (spans[before]! + spans[at]!) / (2 * run), depth: area / run, edges };
  });
}

/** What the wind at a gust pressure and the weight ask of one point. */
export function demandOf(panel: HoldPanel, at: number, lie: Lie, pressure: number, side: Side): Demand {
  const point = panel.points[at]!;
  const end = side === 'worst' ? 'high' : 'low';
  const lift = point.load[end] * pressure;
  const normal = lie.share * (lift * 1e-6 * panel.area + panel.weight * Math.sin(panel.lean));
  let x = 0;
  let y = -lie.share * panel.weight * Math.cos(panel.lean);
  if (lift > 0) {
    for (const edge of lie.edges) {
      // Each edge is shared by two points, but its sag is quick to find and the panel is checked once for all.
      const sag = stretchedSag(edge.span, lift, panel.stiffness[end], panel.slack);
      const pull = tensionAt(edge.span, lift, sag) * lie.depth;
      x += pull * edge.x;
      y += pull * edge.y;
    }
  }
  return { normal, side: Math.hypot(x, y) };
}

import { mm, pascal } from '@panewright/quantity';
import { stretchSag } from '../edge/sag.ts';
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

export function lieOf(panel: HoldPanel, at: number): Lie {
  const { points } = panel;
  const count = points.length;
  const here = points[at]!;
  let run = 0;
  for (let i = 0; i < count; i++) {
    const next = points[(i + 1) % count]!;
    run += Math.hypot(next.x - points[i]!.x, next.y - points[i]!.y);
  }
  const edges = [points[(at + count - 1) % count]!, points[(at + 1) % count]!].map((other) => {
    const span = Math.hypot(other.x - here.x, other.y - here.y);
    return { x: (other.x - here.x) / span, y: (other.y - here.y) / span, span };
  });
  return { share: (edges[0]!.span + edges[1]!.span) / (2 * run), depth: panel.area / run, edges };
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
      const strip = stretchSag(mm(edge.span), pascal(lift), panel.stiffness[end], panel.slack);
      if (!strip.ok) throw new Error(`a checked panel was refused: ${strip.refusal.code}`);
      x += strip.value.tension * lie.depth * edge.x;
      y += strip.value.tension * lie.depth * edge.y;
    }
  }
  return { normal, side: Math.hypot(x, y) };
}

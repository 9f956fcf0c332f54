import type { HoldPlan, PanelPlan } from '@panewright/design';
import { arcOf, type Edge, edges, type Point, point } from '@panewright/geometry';
import { STYLE } from '../ink.ts';
import { circle, group, line, outlinePath } from '../path.ts';
import type { GroupItem, Item } from '../sheet.ts';

/** Length of the tick that shows where an edge's middle or a hold point falls, mm each side of the finished edge. */
const TICK = 5;

/** Everything drawn of one pattern, in its own frame, outside face up. Lines only: labels depend on the paper. */
export function patternDrawing(panel: PanelPlan, hold: HoldPlan | undefined): readonly GroupItem[] {
  const points = hold?.points ?? [];
  const pockets = points.flatMap(({ pocket }) =>
    pocket ? [outlinePath(pocket, { line: STYLE.pocket })] : [],
  );
  const places = points.flatMap((one) => [
    circle(one.cavity.centre, one.cavity.radius, { line: STYLE.hold }),
    ...cross(one.centre, 4),
  ]);
  return [
    group('cut', [outlinePath(panel.cut, { line: STYLE.cut })]),
    group('finished', [outlinePath(panel.finished, { line: STYLE.finished })]),
    group(
      'stitch',
      panel.stitch.map((one) => outlinePath(one, { line: STYLE.stitch })),
    ),
    group('pocket', pockets),
    group('hold', places),
    group('mark', [
      ...centreMarks(panel),
      ...points.map((one) => inwardTick(one.edgePoint, one.inward)),
      ...bindingStart(panel),
    ]),
  ];
}

export function cross(at: Point, reach: number): Item[] {
  return [
    line(point(at.x - reach, at.y), point(at.x + reach, at.y), STYLE.hold),
    line(point(at.x, at.y - reach), point(at.x, at.y + reach), STYLE.hold),
  ];
}

/** A tick from the finished edge inward, where a hold point belongs. */
function inwardTick(at: Point, inward: number): Item {
  return line(at, point(at.x + TICK * Math.cos(inward), at.y + TICK * Math.sin(inward)), STYLE.mark);
}

export interface EdgeMark {
  readonly edge: string;
  readonly at: Point;
  /** Unit direction along the edge. */
  readonly along: { readonly x: number; readonly y: number };
}

/** Middle of each side of the finished panel, corner arcs left out. */
export function edgeMiddles(panel: PanelPlan): readonly EdgeMark[] {
  return edges(panel.finished).flatMap((edge, index) => {
    const name = panel.edgeNames[index] ?? '';
    return name.startsWith('corner:') ? [] : [{ edge: name, ...middleOf(edge) }];
  });
}

function middleOf(edge: Edge): {
  readonly at: Point;
  readonly along: { readonly x: number; readonly y: number };
} {
  const dx = edge.to.x - edge.from.x;
  const dy = edge.to.y - edge.from.y;
  const chord = Math.hypot(dx, dy);
  const along = { x: dx / chord, y: dy / chord };
  const arc = arcOf(edge);
  if (arc === undefined)
    return { at: point((edge.from.x + edge.to.x) / 2, (edge.from.y + edge.to.y) / 2), along };
  const angle = arc.start + arc.sweep / 2;
  const at = point(arc.centre.x + arc.radius * Math.cos(angle), arc.centre.y + arc.radius * Math.sin(angle));
  return { at, along };
}

/** A small V on the inside of the edge, its point on the middle. */
function centreMarks(panel: PanelPlan): Item[] {
  return edgeMiddles(panel).flatMap(({ at, along }) => {
    const inward = { x: -along.y, y: along.x };
    const arm = (side: number) =>
      point(at.x + TICK * (inward.x + 0.5 * side * along.x), at.y + TICK * (inward.y + 0.5 * side * along.y));
    return [line(at, arm(1), STYLE.mark), line(at, arm(-1), STYLE.mark)];
  });
}

/** Two ticks across the edge where the binding begins. */
function bindingStart(panel: PanelPlan): Item[] {
  const { edging } = panel;
  if (edging.kind !== 'binding') return [];
  const { at, edge } = edging.startsAt;
  const side = edgeMiddles(panel).find((one) => one.edge === edge);
  if (side === undefined) return [];
  const { along } = side;
  return [-1.2, 1.2].map((shift) =>
    line(
      point(at.x + shift * along.x + TICK * along.y, at.y + shift * along.y - TICK * along.x),
      point(at.x + shift * along.x - TICK * along.y, at.y + shift * along.y + TICK * along.x),
      STYLE.mark,
    ),
  );
}

import type { HoldPlan, OpeningShape, PatternMember } from '@panewright/design';
import { bounds, movePoint, type Point, point } from '@panewright/geometry';
import { type Block, paragraph, space } from '../block.ts';
import { bareLengthText } from '../figures.ts';
import { CAPITAL, INK, STYLE } from '../ink.ts';
import type { SheetInput } from '../options.ts';
import { line } from '../path.ts';
import type { Item } from '../sheet.ts';
import { tableRows } from '../table.ts';
import type { Words } from '../words.ts';
import { fittingOrder } from './fittingOrder.ts';

type View = 'outside' | 'inside';
export type Side = readonly [Point, Point];

/** The two sides of the opening that a view's figures are measured from, in the opening's own frame. */
export interface MeasuredFrom {
  readonly lower: Side;
  readonly across: Side;
  /** Where `across` is, as this view shows it. */
  readonly hand: 'left' | 'right';
}

/** How much squarer the right side must be to be measured from instead of the left, radians. */
const SQUARER = (2 * Math.PI) / 180;

/**
 * The lower side, and the left one as seen; the right one where that is squarer to the lower side. An opening without four
 * such sides is measured from a rule laid level at its lowest point and one upright at its outermost.
 */
export function measuredFrom(shape: OpeningShape, view: View): MeasuredFrom {
  const [bottomLeft, bottomRight, topRight, topLeft] = fourCorners(shape);
  const lower: Side = [bottomLeft, bottomRight];
  const [left, right]: readonly [Side, Side] = [
    [bottomLeft, topLeft],
    [bottomRight, topRight],
  ];
  const [near, far] = view === 'outside' ? [left, right] : [right, left];
  const takeFar = outOfSquare(lower, near) > outOfSquare(lower, far) + SQUARER;
  return { lower, across: takeFar ? far : near, hand: takeFar ? 'right' : 'left' };
}

/** True where the opening has a lower, right, upper and left side between four corners. */
export const hasFourSides = ({ corners }: OpeningShape): boolean =>
  corners.length === 4 && corners[0]!.name === 'bottomLeft';

function fourCorners(shape: OpeningShape): readonly [Point, Point, Point, Point] {
  if (hasFourSides(shape))
    return shape.corners.map(({ at }) => at) as unknown as [Point, Point, Point, Point];
  const { minX, minY, maxX, maxY } = bounds(shape.outline);
  return [point(minX, minY), point(maxX, minY), point(maxX, maxY), point(minX, maxY)];
}

const directionOf = ([a, b]: Side): number => Math.atan2(b.y - a.y, b.x - a.x);

const outOfSquare = (lower: Side, side: Side): number =>
  Math.abs(directionOf(side) - directionOf(lower) - Math.PI / 2);

/** Heavy strokes beside the two sides, just off the drawing. `at` takes the opening's frame to the picture's. */
export function edgesMeasured(at: (p: Point) => Point, { lower, across }: MeasuredFrom): readonly Item[] {
  const middle = at(
    point((lower[0].x + lower[1].x + across[1].x) / 3, (lower[0].y + lower[1].y + across[1].y) / 3),
  );
  const style = { ...STYLE.cut, colour: INK.accent };
  return [lower, across].map((side) => {
    const [a, b] = [at(side[0]), at(side[1])];
    const length = Math.hypot(b.x - a.x, b.y - a.y);
    const normal = { x: (b.y - a.y) / length, y: (a.x - b.x) / length };
    const inward = normal.x * (middle.x - a.x) + normal.y * (middle.y - a.y) > 0;
    const off = inward ? -OFF : OFF;
    const move = (p: Point) => point(p.x + off * normal.x, p.y + off * normal.y);
    return line(move(a), move(b), style);
  });
}

/** From the opening's side to the stroke, mm on paper: clear of the panel's edge. */
const OFF = 3.2;

export interface Placed {
  readonly shape: OpeningShape;
  readonly member: PatternMember;
  readonly hold: HoldPlan | undefined;
}

/** Hold points by their distances from two sides of the opening that a fitter can put a rule to, in both views. */
export function holdTable(one: Placed, input: SheetInput, width: number, words: Words): readonly Block[] {
  const points = one.hold?.points ?? [];
  if (points.length === 0) return [];
  const { metrics, units } = input.options;
  const [outside, inside] = [measuredFrom(one.shape, 'outside'), measuredFrom(one.shape, 'inside')];
  const order = fittingOrder(one, points);
  const rows = points.map((hold) => {
    const at = movePoint(one.member.place, hold.centre);
    const figures = [outside.across, inside.across, outside.lower].map((side) => distanceToSide(at, side));
    const place = String(order.indexOf(hold.number) + 1);
    return [String(hold.number), ...figures.map((value) => bareLengthText(value, units)), place];
  });
  const columns = [
    { title: words.install.number(), width: width * 0.1 },
    {
      title: `${words.install.across('outside', outside.hand)}, ${units}`,
      width: width * 0.25,
      align: 'end' as const,
    },
    {
      title: `${words.install.across('inside', inside.hand)}, ${units}`,
      width: width * 0.25,
      align: 'end' as const,
    },
    { title: `${words.install.upFrom()}, ${units}`, width: width * 0.27, align: 'end' as const },
    { title: words.install.order(), width: width * 0.13, align: 'end' as const },
  ];
  const unit = units === 'in' ? words.install.inches() : words.install.millimetres();
  const small = { capital: CAPITAL.small };
  return [
    space(3),
    ...paragraph(
      hasFourSides(one.shape) ? words.install.tableNote(unit) : words.install.tableNoteBox(unit),
      width,
      metrics,
      small,
    ),
    ...tableRows(columns, rows, metrics, { capital: CAPITAL.body, close: true }),
  ];
}

/** Square to the side, mm. */
export function distanceToSide(p: Point, [a, b]: Side): number {
  return Math.abs((b.x - a.x) * (p.y - a.y) - (b.y - a.y) * (p.x - a.x)) / Math.hypot(b.x - a.x, b.y - a.y);
}

import type { OpeningPlan, ReadingName } from '../contract.ts';
import { between, type View, type XY } from '../drawing/view.ts';

/** The four sharp corners: bottom left, bottom right, top right, top left. */
export type Corners = readonly [XY, XY, XY, XY];

/** A stand-in shape for an opening with nothing measured. */
export const SKETCH: Corners = [
  { x: 0, y: 0 },
  { x: 620, y: 0 },
  { x: 620, y: 400 },
  { x: 0, y: 400 },
];

export const cornersOf = (plan: OpeningPlan | undefined): Corners =>
  plan?.shape ? (plan.shape.corners.map((corner) => corner.at) as unknown as Corners) : SKETCH;

/** How far an entry for a side or a corner sits off the line, in dots. */
const OFF_SIDE = 62;
const OFF_TOP = 34;

/** Where the entry of a reading sits on the screen: the middle of its box, in dots. */
export function readingPlace(of: ReadingName, corners: Corners, view: View): XY {
  const [bl, br, tr, tl] = corners.map((corner) => view.at(corner)) as unknown as Corners;
  const shift = (point: XY, x: number, y: number): XY => ({ x: point.x + x, y: point.y + y });
  switch (of) {
    case 'bottom':
      return shift(between(bl, br, 0.5), 0, OFF_TOP);
    case 'top':
      return shift(between(tl, tr, 0.5), 0, -OFF_TOP);
    case 'left':
      return shift(between(bl, tl, 0.5), -OFF_SIDE, 0);
    case 'right':
      return shift(between(br, tr, 0.5), OFF_SIDE, 0);
    case 'rising':
      return between(bl, tr, 0.22);
    case 'falling':
      return between(tl, br, 0.22);
    case 'midWidth':
      return between(between(bl, tl, 0.5), between(br, tr, 0.5), 0.77);
    case 'midHeight':
      return between(between(bl, br, 0.5), between(tl, tr, 0.5), 0.82);
    case 'radiusBottomLeft':
      return shift(bl, -OFF_SIDE, OFF_TOP);
    case 'radiusBottomRight':
      return shift(br, OFF_SIDE, OFF_TOP);
    case 'radiusTopRight':
      return shift(tr, OFF_SIDE, -OFF_TOP);
    case 'radiusTopLeft':
      return shift(tl, -OFF_SIDE, -OFF_TOP);
  }
}

/** The line a reading was taken along, in millimetres; a corner's radius has none. */
export function readingLine(of: ReadingName, [bl, br, tr, tl]: Corners): readonly [XY, XY] | null {
  switch (of) {
    case 'bottom':
      return [bl, br];
    case 'right':
      return [br, tr];
    case 'top':
      return [tl, tr];
    case 'left':
      return [bl, tl];
    case 'rising':
      return [bl, tr];
    case 'falling':
      return [tl, br];
    case 'midWidth':
      return [between(bl, tl, 0.5), between(br, tr, 0.5)];
    case 'midHeight':
      return [between(bl, br, 0.5), between(tl, tr, 0.5)];
    default:
      return null;
  }
}

/** The order a person goes round in; also the order of the Tab key. */
export const WALK: readonly ReadingName[] = [
  'bottom',
  'right',
  'top',
  'left',
  'rising',
  'falling',
  'radiusBottomLeft',
  'radiusBottomRight',
  'radiusTopRight',
  'radiusTopLeft',
  'midWidth',
  'midHeight',
];

import {
  alignOutlines,
  inscribedCircle,
  intersect,
  moveOutline,
  type Outline,
  offset,
  outlineFrom,
  point,
  roundedPolygon,
  validate,
} from '@panewright/geometry';
import { mm, radian } from '@panewright/quantity';
import { numbersFrom, starOutline } from './testing/starOutline.ts';

const shapeOf = (result: ReturnType<typeof roundedPolygon>): Outline => {
  if (!result.ok) throw new Error(result.refusal.code);
  return result.value;
};

const pane = shapeOf(roundedPolygon([point(0, 0), point(1000, 0), point(980, 600), point(40, 560)], mm(75)));
const again = moveOutline(
  { angle: radian(2), shift: point(300, 80), mirrored: false },
  shapeOf(roundedPolygon([point(0, 0), point(1001, 0), point(980, 601), point(39, 560)], mm(74))),
);
const star = starOutline(4, 14);
const other = starOutline(5, 14, 60, 20);

/** A traced window: many short sides round an oval, each off by a fraction of a millimetre. */
function traced(count: number): Outline {
  const next = numbersFrom(1);
  const corners = Array.from({ length: count }, (_, i) => {
    const angle = (2 * Math.PI * i) / count;
    const reach = 1 + 0.0004 * next();
    return point(500 * reach * Math.cos(angle), 300 * reach * Math.sin(angle));
  });
  const outline = outlineFrom(corners);
  if (!outline.ok) throw new Error(outline.refusal.code);
  return outline.value;
}

const fine = traced(1000);
const traces = [
  traced(200),
  moveOutline({ angle: radian(1), shift: point(9, 9), mirrored: false }, traced(210)),
] as const;

export const benches: { name: string; run: () => unknown }[] = [
  { name: 'offset a rounded window of 8 edges by 6 mm', run: () => offset(pane, mm(6)) },
  { name: 'offset 14 lines and arcs inward by 20 mm', run: () => offset(star, mm(-20)) },
  { name: 'offset 1,000 traced sides inward by 10 mm', run: () => offset(fine, mm(-10)) },
  { name: 'validate 1,000 traced sides', run: () => validate(fine) },
  { name: 'intersect two outlines of 14 lines and arcs', run: () => intersect(star, other) },
  { name: 'align two measured windows', run: () => alignOutlines(pane, again) },
  { name: 'align two traced windows of 200 sides', run: () => alignOutlines(traces[0], traces[1]) },
  { name: 'largest circle in 14 lines and arcs', run: () => inscribedCircle(star) },
];

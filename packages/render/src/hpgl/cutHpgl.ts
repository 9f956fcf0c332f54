import type { LayDrawing, PieceDrawing } from '@panewright/drawing';
import {
  bounds,
  compose,
  moveOutline,
  movePoint,
  nearest,
  normalAt,
  type Outline,
  type Point,
  point,
  type Rigid,
  shiftBy,
} from '@panewright/geometry';
import { cutOrder, nearestNext } from './cutOrder.ts';
import { knifePath } from './knifePath.ts';
import { checkPlotOptions, MARGIN, type PlotOptions } from './plotOptions.ts';
import { type PlotWriter, plotWriter } from './plotWriter.ts';
import { roundFrom, type Stroke } from './stroke.ts';

/** Half the length of a cross, and the length of a tick, mm. */
const CROSS = 4;
const TICK = 5;
/** Height of names' capitals, mm, and the room of a letter for its height. */
const LETTER = 5;
const LETTER_ROOM = 1.05;

interface Placed {
  readonly piece: PieceDrawing;
  readonly place: Rigid;
}

/**
 * One piece as an HP-GL file: pen 1 draws its marks, lines and name, pen 2 then cuts its outline. Its box begins
 * `margin` mm from the plotter's origin both ways.
 *
 * @accuracy every line within 0.025 mm of the plan
 * @refuses nothing; settings out of range, and a piece out of the language's range, throw
 * @source sources.md#hpgl-2
 */
export function pieceHpgl(piece: PieceDrawing, options: PlotOptions = {}): string {
  checkPlotOptions(options);
  const { margin = MARGIN } = options;
  const box = bounds(piece.boundary);
  return plotted([{ piece, place: shiftBy(margin - box.minX, margin - box.minY) }], options);
}

/**
 * A whole lay as an HP-GL file: x along the roll, its cut end `margin` mm from the origin, y from its edge. Everything
 * is drawn before anything is cut; what lies in a piece is cut before it, else the nearest comes next.
 *
 * @accuracy every line within 0.025 mm of the plan
 * @refuses nothing; settings out of range, and a roll out of the language's range, throw
 * @source sources.md#hpgl-2
 */
export function layHpgl(lay: LayDrawing, options: PlotOptions = {}): string {
  checkPlotOptions(options);
  const along = shiftBy(options.margin ?? MARGIN, 0);
  const placed = lay.placed.map(({ piece: name, place }): Placed => {
    const piece = lay.pieces.find((one) => one.name === name);
    if (piece === undefined) throw new Error(`The lay ${lay.name} places ${name}, which it does not hold.`);
    return { piece, place: compose(along, place) };
  });
  return plotted(placed, options);
}

function plotted(placed: readonly Placed[], options: PlotOptions): string {
  const writer = plotWriter();
  writer.pen(1);
  const at = drawAll(placed, writer, options.names ?? true);
  writer.pen(2);
  cutAll(
    placed.map(({ piece, place }) => moveOutline(place, piece.boundary)),
    at,
    writer,
    options,
  );
  return writer.text();
}

/** Marks piece by piece, each piece's nearest-next. Ends where the pen is at last. */
function drawAll(placed: readonly Placed[], writer: PlotWriter, names: boolean): Point {
  const pieces = placed.map((one) => {
    const box = bounds(moveOutline(one.place, one.piece.boundary));
    const middle = point((box.minX + box.maxX) / 2, (box.minY + box.maxY) / 2);
    return { ...one, box, ends: [middle] };
  });
  let at = point(0, 0);
  for (const { one } of nearestNext(pieces, at)) {
    const wide = one.piece.name.length * LETTER * LETTER_ROOM;
    const fits = wide + 2 * LETTER < one.box.width && 3 * LETTER < one.box.height;
    if (names && fits) writer.label(one.piece.name, point(one.ends[0]!.x - wide / 2, one.ends[0]!.y), LETTER);
    for (const { one: mark, end } of nearestNext(marksOf(one), at)) {
      const stroke = end === 0 ? mark.stroke : backward(mark.stroke);
      writer.stroke(stroke);
      at = mark.ends[mark.ends.length === 1 ? 0 : 1 - end]!;
    }
  }
  return at;
}

interface Mark {
  readonly stroke: Stroke;
  /** One for a closed stroke, both for a straight one. */
  readonly ends: readonly Point[];
}

/** Everything drawn on a piece: finished edge, pockets, stitch lines, crosses, ticks at the edge, grain. */
function marksOf({ piece, place }: Placed): readonly Mark[] {
  const line = (a: Point, b: Point): Mark => {
    const [from, to] = [movePoint(place, a), movePoint(place, b)];
    return { stroke: { start: from, segments: [{ kind: 'line', to }] }, ends: [from, to] };
  };
  const ring = (outline: Outline): Mark => {
    const { segments } = moveOutline(place, outline);
    const start = segments.at(-1)!.to;
    return { stroke: { start, segments }, ends: [start] };
  };
  const tick = (at: Point): Mark => {
    const out = normalAt(piece.boundary, nearest(piece.boundary, at).s);
    return line(at, point(at.x - TICK * out.x, at.y - TICK * out.y));
  };
  return [
    ...[...piece.internal, ...piece.sew].map(ring),
    ...piece.notches.map(tick),
    ...piece.centres.flatMap(({ x, y }) => [
      line(point(x - CROSS, y), point(x + CROSS, y)),
      line(point(x, y - CROSS), point(x, y + CROSS)),
    ]),
    ...(piece.grain === undefined ? [] : [line(piece.grain.from, piece.grain.to)]),
  ];
}

/** A straight stroke from its other end. Closed strokes are never turned. */
const backward = ({ start, segments }: Stroke): Stroke => ({
  start: segments.at(-1)!.to,
  segments: [{ kind: 'line', to: start }],
});

function cutAll(contours: readonly Outline[], from: Point, writer: PlotWriter, options: PlotOptions): void {
  const { offset = 0, overcut = 0 } = options.knife ?? {};
  const trails = offset > 0;
  if (trails) writer.stroke(turning(options.margin ?? MARGIN, offset));
  let heading = 0;
  for (const { contour, segment } of cutOrder(contours, trails ? point(0, 0) : from)) {
    const tip = roundFrom(contours[contour]!, segment, overcut);
    if (!trails) writer.stroke(tip);
    else {
      const run = knifePath(tip, offset, heading);
      writer.stroke(run.axis);
      heading = run.heading;
    }
  }
}

/** A short cut in the clear before the pieces, so that the blade's first direction is known: along x. */
const turning = (margin: number, offset: number): Stroke => {
  const y = 1;
  const length = Math.min(10 * offset, Math.max(0, margin - 2 * offset - 1));
  return { start: point(offset + 0.5, y), segments: [{ kind: 'line', to: point(offset + 0.5 + length, y) }] };
};

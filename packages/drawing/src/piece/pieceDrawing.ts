import type { CutPiece, LayPlan, PanelPlan, Plan } from '@panewright/design';
import {
  bounds,
  mirrorAbout,
  moveOutline,
  movePoint,
  nearest,
  type Outline,
  type Point,
  point,
  type Rigid,
  still,
} from '@panewright/geometry';
import type { SheetInput } from '../options.ts';
import { edgeMiddles } from '../pattern/patternDrawing.ts';
import { wordsOf } from '../wordsOf.ts';

/** One kind of piece as a cutter or plotter takes it: millimetres, y up, outside face up. No colours, no device. */
export interface PieceDrawing {
  /** The piece's name in the plan. */
  readonly name: string;
  readonly count: number;
  /** Cut here. */
  readonly boundary: Outline;
  /** On the boundary: hold points' places and the middles of sides. */
  readonly notches: readonly Point[];
  /** Drawn, not cut: the finished edge and the pockets' places. */
  readonly internal: readonly Outline[];
  /** Drawn, not cut: centres of the magnets. */
  readonly centres: readonly Point[];
  readonly sew: readonly Outline[];
  /** Along the warp; none where the cloth may run either way. */
  readonly grain: { readonly from: Point; readonly to: Point } | undefined;
  /** Lines of text that say what it is. */
  readonly annotation: readonly string[];
}

/** Pieces as they lie on one roll, and the roll. x along it, mm. */
export interface LayDrawing {
  readonly name: string;
  readonly length: number;
  readonly width: number;
  readonly pieces: readonly PieceDrawing[];
  readonly placed: readonly { readonly piece: string; readonly copy: number; readonly place: Rigid }[];
}

/** Every kind of piece of the plan. Empty while there is no lay. */
export function piecesOf(input: SheetInput): readonly PieceDrawing[] {
  return (input.plan.cutting?.pieces ?? []).map((piece) => pieceDrawing(piece, input));
}

/** The lays of the plan, each with the drawings of its pieces. */
export function laysOf(input: SheetInput): readonly LayDrawing[] {
  const pieces = piecesOf(input);
  return (input.plan.cutting?.lays ?? []).map((lay) => ({
    name: lay.lay,
    length: lay.length.value,
    width: lay.rollWidth,
    pieces: pieces.filter(({ name }) => lay.placements.some(({ piece }) => piece === name)),
    placed: numbered(lay),
  }));
}

/** Copies of one piece are counted from 1 in the order of the lay. */
export function numbered(lay: LayPlan): LayDrawing['placed'] {
  const counts = new Map<string, number>();
  return lay.placements.map(({ piece, place }) => {
    const copy = (counts.get(piece) ?? 0) + 1;
    counts.set(piece, copy);
    return { piece, copy, place };
  });
}

function pieceDrawing(piece: CutPiece, input: SheetInput): PieceDrawing {
  const words = wordsOf(input.options);
  const { plan, catalogue, job } = input;
  const cloth = catalogue.fabrics.find(({ id }) => id === piece.fabric)?.name ?? piece.fabric;
  const annotation = [
    words.piece.name(piece.piece, piece.count),
    cloth,
    job.name,
    ...(piece.turnedOver ? [words.piece.turnedOver()] : []),
    words.piece.units(),
  ];
  const bare = { name: piece.piece, count: piece.count, boundary: piece.outline, annotation };
  const panel = plan.panels.find((one) => one.pattern === piece.pattern);
  if (piece.kind === 'pocket' || panel === undefined)
    return { ...bare, notches: [], internal: [], centres: [], sew: [], grain: undefined };
  return { ...bare, ...panelMarks(piece, panel, plan) };
}

/** The panel's marks, turned over with the piece where it is. */
function panelMarks(piece: CutPiece, panel: PanelPlan, plan: Plan) {
  const side = piece.turnedOver ? mirrorAbout(0) : still;
  const onPiece = (outline: Outline) => moveOutline(side, outline);
  const points = plan.hold.find((one) => one.pattern === piece.pattern)?.points ?? [];
  const edgePlaces = [...points.map((one) => one.edgePoint), ...edgeMiddles(panel).map(({ at }) => at)];
  return {
    notches: edgePlaces.map((at) => nearest(piece.outline, movePoint(side, at)).at),
    internal: [panel.finished, ...points.flatMap(({ pocket }) => pocket ?? [])].map(onPiece),
    centres: points.map((one) => movePoint(side, one.centre)),
    sew: panel.stitch.map(onPiece),
    grain: grainLine(piece, panel, plan),
  };
}

/** A third of the panel long, through its middle, along the warp as the piece's openings hang. */
function grainLine(piece: CutPiece, panel: PanelPlan, plan: Plan): PieceDrawing['grain'] {
  const { grain } = panel.choices;
  if (grain === 'either') return undefined;
  const members = plan.patterns.find((one) => one.pattern === piece.pattern)?.members ?? [];
  const place = members.find(({ opening }) => opening === piece.openings[0])?.place ?? still;
  const flips = place.mirrored !== piece.turnedOver;
  const up = { x: (flips ? -1 : 1) * Math.sin(place.angle), y: Math.cos(place.angle) };
  const along = grain === 'warpUp' ? up : { x: -up.y, y: up.x };
  const box = bounds(piece.outline);
  const middle = point((box.minX + box.maxX) / 2, (box.minY + box.maxY) / 2);
  const reach = Math.min(box.width, box.height) / 6;
  const end = (side: number) => point(middle.x + side * reach * along.x, middle.y + side * reach * along.y);
  return { from: end(-1), to: end(1) };
}

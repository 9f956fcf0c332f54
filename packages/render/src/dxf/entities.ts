import type { PieceDrawing } from '@panewright/drawing';
import { moveOutline, movePoint, type Outline, type Point, type Rigid } from '@panewright/geometry';

/** Layers by the numbers of ASTM D6673 that all accounts agree on. @source sources.md#astm-d6673 */
export const LAYER = {
  boundary: '1',
  turnPoints: '2',
  curvePoints: '3',
  notches: '4',
  grain: '7',
  internal: '8',
  drillHoles: '13',
  sew: '14',
  annotation: '15',
} as const;
export type LayerNumber = (typeof LAYER)[keyof typeof LAYER];

export type Entity =
  | { readonly kind: 'outline'; readonly layer: LayerNumber; readonly outline: Outline }
  | { readonly kind: 'line'; readonly layer: LayerNumber; readonly from: Point; readonly to: Point }
  | { readonly kind: 'point'; readonly layer: LayerNumber; readonly at: Point }
  | {
      readonly kind: 'text';
      readonly layer: LayerNumber;
      readonly at: Point;
      readonly height: number;
      readonly words: string;
    };

/** How the centres of magnets are written: as crosses that are drawn, or as holes for a machine's drill. */
export type CentreMarks = 'cross' | 'drill';

const CROSS = 4;
/** Where two edges meet straighter than this the boundary runs on smoothly: a curve point, not a turn. Radians. */
const SMOOTH = 0.01;

/** A piece as the entities of a file, moved to its place. */
export function pieceEntities(piece: PieceDrawing, place: Rigid, centres: CentreMarks): readonly Entity[] {
  const outline =
    (layer: LayerNumber) =>
    (one: Outline): Entity => ({ kind: 'outline', layer, outline: moveOutline(place, one) });
  const moved = (p: Point) => movePoint(place, p);
  const boundary = moveOutline(place, piece.boundary);
  const crosses = piece.centres.flatMap((at): Entity[] => {
    const to = moved(at);
    if (centres === 'drill') return [{ kind: 'point', layer: LAYER.drillHoles, at: to }];
    return [
      segment(LAYER.internal, to.x - CROSS, to.y, to.x + CROSS, to.y),
      segment(LAYER.internal, to.x, to.y - CROSS, to.x, to.y + CROSS),
    ];
  });
  return [
    { kind: 'outline', layer: LAYER.boundary, outline: boundary },
    ...corners(boundary),
    ...piece.notches.map((at): Entity => ({ kind: 'point', layer: LAYER.notches, at: moved(at) })),
    ...(piece.grain === undefined
      ? []
      : [
          {
            kind: 'line',
            layer: LAYER.grain,
            from: moved(piece.grain.from),
            to: moved(piece.grain.to),
          } as const,
        ]),
    ...piece.internal.map(outline(LAYER.internal)),
    ...crosses,
    ...piece.sew.map(outline(LAYER.sew)),
  ];
}

const segment = (layer: LayerNumber, x1: number, y1: number, x2: number, y2: number): Entity => ({
  kind: 'line',
  layer,
  from: { x: x1, y: y1 } as Point,
  to: { x: x2, y: y2 } as Point,
});

/** Every vertex of the boundary, told apart as the standard asks: where it turns, where it runs on. */
function corners(outline: Outline): Entity[] {
  const { segments } = outline;
  return segments.map((one, index): Entity => {
    const from = segments.at(index - 1)!.to;
    const next = segments[(index + 1) % segments.length]!;
    const leaving = direction(one.to, next.to, next.kind === 'arc' ? next.bulge : 0, 'start');
    const arriving = direction(from, one.to, one.kind === 'arc' ? one.bulge : 0, 'end');
    const turn = Math.atan2(Math.sin(leaving - arriving), Math.cos(leaving - arriving));
    return {
      kind: 'point',
      layer: Math.abs(turn) > SMOOTH ? LAYER.turnPoints : LAYER.curvePoints,
      at: one.to,
    };
  });
}

/** Direction of travel at an end of a segment: an arc leaves its chord by half its sweep. */
function direction(from: Point, to: Point, bulge: number, end: 'start' | 'end'): number {
  const half = 2 * Math.atan(bulge);
  return Math.atan2(to.y - from.y, to.x - from.x) + (end === 'start' ? -half : half);
}

/** Text that any reader of the format takes: ASCII, the rest as \U+XXXX. */
export const plainText = (words: string): string =>
  [...words.replace(/[\r\n\t]/g, ' ')]
    .map((letter) => {
      const code = letter.codePointAt(0)!;
      if (code >= 32 && code < 127) return letter;
      return code > 0xffff ? '?' : `\\U+${code.toString(16).toUpperCase().padStart(4, '0')}`;
    })
    .join('');

/** A name as a block may have it in R12: capitals, digits, dash, underscore, at most 31. */
export const blockName = (name: string): string =>
  name
    .toUpperCase()
    .replace(/[^A-Z0-9_-]/g, '_')
    .slice(0, 31);

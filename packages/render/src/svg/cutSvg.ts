import type { LayDrawing, PieceDrawing } from '@panewright/drawing';
import {
  bounds,
  moveOutline,
  movePoint,
  type Outline,
  type Point,
  type Rigid,
  still,
} from '@panewright/geometry';
import { num } from '../number.ts';
import { outlineData, type ToFile } from './pathData.ts';
import { escapeXml, xmlId } from './xml.ts';

/** Half the length of a cross or tick, mm. */
const CROSS = 4;
/** Clear room round a piece, mm. */
const MARGIN = 10;

/**
 * One piece as SVG at true size: what is cut and what is drawn in groups of their own, `cut`, `internal`, `sew`,
 * `marks`, `grain`, `annotation`.
 *
 * @accuracy coordinates rounded to 0.001 mm
 * @source sources.md#svg2-paths
 */
export function pieceSvg(piece: PieceDrawing): string {
  const box = bounds(piece.boundary);
  const toFile: ToFile = ({ x, y }) => ({ x: x - box.minX + MARGIN, y: box.maxY - y + MARGIN });
  const size = { width: box.width + 2 * MARGIN, height: box.height + 2 * MARGIN };
  return svg(piece.annotation[0] ?? piece.name, size, [
    ...layers(piece, still, toFile, ''),
    `<g class="annotation" id="annotation" fill="#16201f" font-family="sans-serif" font-size="5">`,
    ...piece.annotation.map((words, index) => {
      const at = toFile({ x: box.minX + box.width / 2, y: box.minY + box.height / 2 } as Point);
      return `<text x="${num(at.x)}" y="${num(at.y + index * 7)}" text-anchor="middle">${escapeXml(words)}</text>`;
    }),
    '</g>',
  ]);
}

/** A roll with its pieces as they are to be cut, at true size, in the same groups piece by piece. */
export function laySvg(lay: LayDrawing): string {
  const toFile: ToFile = ({ x, y }) => ({ x, y: lay.width - y });
  const pieces = lay.placed.flatMap(({ piece, copy, place }) => {
    const drawing = lay.pieces.find(({ name }) => name === piece);
    if (drawing === undefined)
      throw new Error(`The lay ${lay.name} places ${piece}, which it does not hold.`);
    const id = xmlId(`${piece}-${copy}`);
    return [`<g id="${id}">`, ...layers(drawing, place, toFile, `${id}-`), '</g>'];
  });
  return svg(lay.name, { width: lay.length, height: lay.width }, [
    `<g class="roll"><path d="M0 0H${num(lay.length)}V${num(lay.width)}H0Z" fill="none" stroke="#a9b3b1" stroke-width="0.2"/></g>`,
    ...pieces,
  ]);
}

function svg(
  title: string,
  size: { readonly width: number; readonly height: number },
  content: readonly string[],
): string {
  const [width, height] = [num(size.width), num(size.height)];
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}mm" height="${height}mm" viewBox="0 0 ${width} ${height}">`,
    `<title>${escapeXml(title)}</title>`,
    ...content,
    '</svg>\n',
  ].join('\n');
}

function layers(piece: PieceDrawing, place: Rigid, toFile: ToFile, prefix: string): string[] {
  const outlines = (all: readonly Outline[]) =>
    all.map((one) => `<path d="${outlineData(moveOutline(place, one), toFile)}"/>`);
  const segment = (a: Point, b: Point) => {
    const [from, to] = [toFile(movePoint(place, a)), toFile(movePoint(place, b))];
    return `<path d="M${num(from.x)} ${num(from.y)}L${num(to.x)} ${num(to.y)}"/>`;
  };
  const cross = ({ x, y }: Point, reach: number) => [
    segment({ x: x - reach, y } as Point, { x: x + reach, y } as Point),
    segment({ x, y: y - reach } as Point, { x, y: y + reach } as Point),
  ];
  const group = (name: string, colour: string, items: readonly string[]) =>
    items.length === 0
      ? []
      : [
          `<g class="${name}" id="${prefix}${name}" fill="none" stroke="${colour}" stroke-width="0.25">`,
          ...items,
          '</g>',
        ];
  return [
    ...group('cut', '#c00000', outlines([piece.boundary])),
    ...group('internal', '#0050b0', outlines(piece.internal)),
    ...group('sew', '#007a3d', outlines(piece.sew)),
    ...group('marks', '#16201f', [
      ...piece.notches.flatMap((at) => cross(at, CROSS / 2)),
      ...piece.centres.flatMap((at) => cross(at, CROSS)),
    ]),
    ...group(
      'grain',
      '#16201f',
      piece.grain === undefined ? [] : [segment(piece.grain.from, piece.grain.to)],
    ),
  ];
}

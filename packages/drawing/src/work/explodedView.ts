import type { HoldPoint } from '@panewright/design';
import { type Outline, type Point, point } from '@panewright/geometry';
import { type Block, paragraph, picture, stack } from '../block.ts';
import { fineLengthText } from '../figures.ts';
import { CAPITAL, INK, STYLE, WEIGHT } from '../ink.ts';
import { type Box, boxOfPoints, circle, flattenPath, line, outlinePath, polygon } from '../path.ts';
import type { Item, LineStyle, PathItem } from '../sheet.ts';
import { CLOSE, leading, text, wrap } from '../text.ts';
import type { PanelWork } from './panelSteps.ts';

/** One layer as it lies, and what it is. */
interface Layer {
  readonly words: string;
  /** Outlines in the pattern's frame, each drawn with its look. */
  readonly shapes: readonly { readonly outline: Outline; readonly line: LineStyle; readonly fill?: string }[];
}

/** From layer to layer down the drawing, mm, and more where the words beside a layer want it. */
const STEP = 6.2;
/** How the panel is laid over: its height is drawn by this much across and this much up. */
const LEAN = { across: 0.32, up: 0.4 } as const;
const DRAWING = { width: 44, height: 11 } as const;

/** A panel taken apart: its layers one above another from the outside in, each with its name and figures. */
export function explodedView(work: PanelWork, width: number): Block {
  const { input, words, panel } = work;
  const { metrics } = input.options;
  const layers = layersOf(work);
  const ring = flattenPath(outlinePath(panel.finished, {}), 0.5);
  const box = boxOfPoints(ring);
  const scale = Math.min(
    DRAWING.width / (box.maxX - box.minX + LEAN.across * (box.maxY - box.minY)),
    DRAWING.height / (LEAN.up * (box.maxY - box.minY)),
  );
  const drawingWidth = Math.min(DRAWING.width, width * 0.45);
  const laid = layOver(box, (scale * drawingWidth) / DRAWING.width);
  const left = drawingWidth + 7;
  const look = { capital: CAPITAL.least, lead: CLOSE };
  const pitch = leading(look.capital, look.lead);
  const said = layers.map((layer) => wrap(layer.words, width - left - 2, metrics, look));
  const step = Math.max(STEP, ...said.map(({ length }) => length * pitch + 0.5));
  const right = rightmost(ring.map(laid));
  const up = (layers.length - 1) * step + 3;
  const beside = right.y + up + (said[0]!.length * pitch) / 2;
  const height = Math.max(laid(point(box.maxX, box.maxY)).y + up + 3, beside + 1);
  const items = layers.toReversed().flatMap((layer, index): Item[] => {
    const up = index * step + 3;
    const y = right.y + up;
    const lines = said.at(-1 - index)!;
    const first = y + ((lines.length - 1) * pitch) / 2 - look.capital / 2;
    return [
      ...layer.shapes.flatMap(({ outline, ...style }) => shape(outline, laid, up, style)),
      line(point(right.x + 1, y), point(left - 2, y), STYLE.dimension),
      ...lines.map((one, at) => text(one, point(left, first - at * pitch), metrics, look)),
    ];
  });
  const title = paragraph(words.exploded.title(), width, metrics, { capital: CAPITAL.small, face: 'bold' });
  return stack([...title, picture(items, height)]);
}

/** Takes the pattern's frame to the drawing's: scaled, leaned to the right, laid back. */
function layOver(box: Box, scale: number): (p: Point) => Point {
  return ({ x, y }) =>
    point(scale * (x - box.minX + LEAN.across * (y - box.minY)), scale * LEAN.up * (y - box.minY));
}

const rightmost = (points: readonly Point[]): Point =>
  points.reduce((best, one) => (one.x > best.x ? one : best));

/** Laid back, an arc is no arc any more: it is drawn in short chords. */
function shape(
  outline: Outline,
  laid: (p: Point) => Point,
  up: number,
  style: { readonly line: LineStyle; readonly fill?: string },
): readonly PathItem[] {
  const points = flattenPath(outlinePath(outline, {}), 0.5).slice(1).map(laid);
  return [
    polygon(
      points.map((p) => point(p.x, p.y + up)),
      style,
    ),
  ];
}

const EDGE: LineStyle = { weight: WEIGHT.thin, colour: INK.ink };

/** The layers from the outside in. */
function layersOf(work: PanelWork): readonly Layer[] {
  const { panel, hold } = work;
  const { finished, cut, band } = panel;
  const layers: Layer[] = [];
  if (band !== null)
    layers.push({
      words: edgeWords(work),
      shapes: [
        { outline: finished, line: EDGE, fill: INK.band },
        { outline: band, line: EDGE, fill: INK.paper },
      ],
    });
  layers.push({ words: clothWords(work), shapes: [{ outline: cut, line: EDGE, fill: INK.wash }] });
  const points = hold?.points ?? [];
  return points.length === 0 ? layers : [...layers, ...holdLayers(work, points)];
}

function holdLayers(work: PanelWork, points: readonly HoldPoint[]): readonly Layer[] {
  const { words, panel, named, hold } = work;
  const discs = (fill: string) =>
    points.map(({ centre, cavity }) => {
      const { segments } = circle(centre, cavity.radius * 0.6, {});
      return { outline: { segments } as unknown as Outline, line: EDGE, fill };
    });
  // A trace of the panel, so that what lies on it is seen to be one layer.
  const place = { outline: panel.finished, line: STYLE.rule };
  const [own] = hold?.openings ?? [];
  const glass = (own?.layers ?? []).map(({ name }) => words.exploded.layer(name)).join(', ');
  if (named.fastener !== undefined)
    return [
      {
        words: words.exploded.fasteners(points.length, named.fastener.name),
        shapes: [place, ...discs(INK.accent)],
      },
    ];
  const patches = points.flatMap(({ pocket }) =>
    pocket ? [{ outline: pocket, line: EDGE, fill: INK.band }] : [],
  );
  const pole =
    hold?.poles === 'keyed' ? words.exploded.keyed() : words.install.pole(panel.choices.hold.poleOut);
  return [
    {
      words: words.exploded.magnets(points.length, named.outside?.name ?? panel.choices.hold.outside, pole),
      shapes: [place, ...discs(INK.accent)],
    },
    {
      words: words.exploded.pockets(
        points.length,
        (hold?.pocketPieces ?? []).map(({ piece }) => piece),
      ),
      shapes: [place, ...patches],
    },
    ...(glass === ''
      ? []
      : [
          {
            words: words.exploded.between(glass),
            shapes: [{ outline: panel.finished, line: STYLE.opening }],
          },
        ]),
    {
      words:
        named.strip === undefined
          ? words.exploded.inside(points.length, named.inside?.name ?? panel.choices.hold.inside)
          : words.exploded.steel(points.length, named.strip.name),
      shapes: [place, ...discs(INK.faint)],
    },
  ];
}

function edgeWords({ words, panel, named, input }: PanelWork): string {
  const band = fineLengthText(panel.bandWidth, input.options.units, input.options.language);
  const { edging } = panel;
  if (edging.kind === 'binding') return words.exploded.binding(named.binding?.name ?? edging.binding, band);
  return words.exploded.hem(band);
}

function clothWords({ words, panel, named }: PanelWork): string {
  return words.exploded.cloth(named.fabric?.name ?? panel.choices.fabric);
}

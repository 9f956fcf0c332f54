import { type CutPiece, type LayPlacement, type LayPlan, openingsOn } from '@panewright/design';
import { centroid, point } from '@panewright/geometry';
import { innerWidth, oneLine, type PageFrame, paragraph, stack } from '../block.ts';
import { figureText, lengthText, percentText, sizeText, stockText } from '../figures.ts';
import { CAPITAL, INK, STYLE, WEIGHT } from '../ink.ts';
import { boxAround, occupied, placeNear } from '../labelPlacer.ts';
import type { SheetInput } from '../options.ts';
import { pageFrame } from '../pageFrame.ts';
import { boxOfPoints, flattenPath, group, lineAt, outlinePath, placePath, rectangle } from '../path.ts';
import { numbered } from '../piece/pieceDrawing.ts';
import type { FontMetrics, Item, Page, PathItem, Sheet } from '../sheet.ts';
import { sizeFor, text, widthOf } from '../text.ts';
import type { Words } from '../words.ts';
import { wordsOf } from '../wordsOf.ts';
import { cuttingRules } from '../work/cuttingRules.ts';

/** Pieces on their rolls, one page a lay. Undefined while there is no lay. */
export function laySheet(input: SheetInput): Sheet | undefined {
  const { cutting } = input.plan;
  if (cutting === null || cutting.lays.length === 0) return undefined;
  const words = wordsOf(input.options);
  const title = words.lay.title();
  const frame = pageFrame(input, title, 'across');
  const drawn = cutting.lays.map((lay) => drawLay(lay, cutting.pieces, input, frame, words));
  return {
    path: 'lay',
    title: `${title}: ${input.job.name}`,
    symbols: Object.fromEntries(drawn.map((one, index) => [`lay${index}`, one.symbol])),
    pages: drawn.map(
      (one, index): Page => ({
        ...{ label: cutting.lays[index]!.lay, width: frame.width, height: frame.height },
        items: [...frame.furniture(index + 1, drawn.length), ...one.items(`lay${index}`)],
      }),
    ),
  };
}

const HEAD = 24;
const ROW_GAP = 11;
const SIDE = 9;

/** Of a roll what the lay takes; an offcut is drawn whole, as it lies on the table. */
const drawnLength = ({ offcut, length }: LayPlan): number => offcut?.along ?? length.value;

/** The roll cut into rows, so that a long lay is drawn as large as a short one. */
function rowsFor(
  lay: LayPlan,
  width: number,
  height: number,
): { readonly rows: number; readonly scale: number } {
  let best = { rows: 1, scale: 0 };
  for (let rows = 1; rows <= 8; rows++) {
    const scale = Math.min(
      (width * rows) / drawnLength(lay),
      (height - rows * ROW_GAP) / (rows * lay.rollWidth),
    );
    if (scale > best.scale * 1.001) best = { rows, scale };
  }
  return best;
}

function drawLay(
  lay: LayPlan,
  pieces: readonly CutPiece[],
  input: SheetInput,
  frame: PageFrame,
  words: Words,
) {
  const { metrics } = input.options;
  const width = innerWidth(frame) - SIDE;
  const height = frame.height - frame.top - frame.bottom - HEAD;
  const { rows, scale } = rowsFor(lay, width, height);
  const paths = piecePaths(lay, pieces, scale);
  const perRow = Math.min(width, (drawnLength(lay) / rows) * scale);
  const high = lay.rollWidth * scale;
  const place = (row: number) => ({
    x: frame.left + SIDE,
    y: frame.height - frame.top - HEAD - (row + 1) * (high + ROW_GAP) + ROW_GAP,
    from: row * perRow,
  });
  return {
    symbol: [
      group('roll', [...selvages(lay, scale), ...keptClear(lay, scale)]),
      group('cut', paths),
    ] as const,
    items: (symbol: string): Item[] => [
      ...head(lay, input, frame, words, rows),
      ...Array.from({ length: rows }, (_, row) => row).flatMap((row): Item[] => {
        const at = place(row);
        const end = Math.min(drawnLength(lay) * scale - at.from, perRow);
        const window = { x: at.x, y: at.y, width: end, height: high };
        return [
          { kind: 'use', symbol, at: point(at.x - at.from, at.y), window },
          group('roll', [rectangle(window, { line: STYLE.dimension })]),
          group('text', [
            ...rowLabels(
              ...([lay, [...selvages(lay, scale), ...keptClear(lay, scale), ...paths], paths] as const),
              ...([at, window, metrics] as const),
            ),
            ...ruler(lay, scale, at, window, input),
            ...(row === 0 ? [widthMark(lay, window, input)] : []),
          ]),
        ];
      }),
    ],
  };
}

/** Pieces as they lie, pockets darker than panels. */
function piecePaths(lay: LayPlan, pieces: readonly CutPiece[], scale: number): readonly PathItem[] {
  const kind = (one: LayPlacement) => pieces.find(({ piece }) => piece === one.piece)?.kind ?? 'panel';
  return lay.placements.map((one) =>
    placePath(
      outlinePath(one.outline, {
        line: { weight: WEIGHT.thin, colour: INK.ink },
        fill: kind(one) === 'panel' ? INK.wash : INK.band,
      }),
      { scale },
    ),
  );
}

/** The parts at each side of the roll that are not used. */
function selvages(lay: LayPlan, scale: number): PathItem[] {
  if (lay.selvage <= 0) return [];
  const length = drawnLength(lay) * scale;
  return [lay.selvage, lay.rollWidth - lay.selvage].map((y) =>
    lineAt(0, y * scale, length, y * scale, STYLE.opening),
  );
}

/** Whole lines: dashed ones of a narrow place ran into one. */
const CROSSED = { weight: WEIGHT.thin, colour: INK.soft };

/** A cross on each place where nothing is cut, as much of it as the lay's length and width show. */
function keptClear(lay: LayPlan, scale: number): PathItem[] {
  const places = lay.reserved.filter(({ from, near }) => from < drawnLength(lay) && near < lay.rollWidth);
  return places.flatMap(({ from, to, near, far }) => {
    const [x0, y0] = [from * scale, near * scale];
    const [x1, y1] = [Math.min(to, drawnLength(lay)) * scale, Math.min(far, lay.rollWidth) * scale];
    return [
      rectangle({ x: x0, y: y0, width: x1 - x0, height: y1 - y0 }, { line: CROSSED }),
      lineAt(x0, y0, x1, y1, CROSSED),
      lineAt(x0, y1, x1, y0, CROSSED),
    ];
  });
}

function head(
  lay: LayPlan,
  input: SheetInput,
  frame: PageFrame,
  words: Words,
  rows: number,
): readonly Item[] {
  const { metrics, units, language } = input.options;
  const width = innerWidth(frame);
  const cloth = input.catalogue.fabrics.find(({ id }) => id === lay.fabric)?.name ?? lay.fabric;
  const title = oneLine(
    words.lay.heading(lay.lay, cloth),
    width,
    metrics,
    { most: CAPITAL.heading, least: CAPITAL.small },
    { face: 'bold' },
  );
  const share = [
    percentText(Math.round(lay.density * 1000) / 1000, language),
    lay.placements.length,
  ] as const;
  const figures = lay.offcut
    ? words.lay.offcut(
        ...([lay.offcut.name, lay.offcut.place] as const),
        sizeText(lay.offcut.along, lay.offcut.across, units),
        ...share,
      )
    : words.lay.figures(
        ...([lengthText(lay.rollWidth, units), stockText(lay.length.value, units, language)] as const),
        ...share,
      );
  const { together, oneWay } = cuttingRules(input);
  const notes = [
    figures,
    ...(rows > 1 ? [words.lay.rows(rows)] : []),
    words.lay.shaded(),
    ...(lay.reserved.length > 0 ? [words.lay.keptClear(lay.reserved.length)] : []),
    ...(together ? [words.lay.ownPockets(openingsNamed(lay, input))] : []),
    ...(oneWay ? [words.lay.oneWay()] : []),
  ].join(' ');
  return stack([
    ...paragraph(title.words, width + 1, metrics, { capital: title.capital, face: 'bold' }),
    ...paragraph(notes, width, metrics, { capital: CAPITAL.small }),
  ]).draw(frame.left, frame.height - frame.top);
}

/** Openings whose panels a lay has; of a lay of many their names would run into the drawing, and are left out. */
function openingsNamed(lay: LayPlan, { job, plan }: SheetInput): string {
  const on = openingsOn(lay, plan.cutting?.pieces ?? []);
  const ids = job.openings.map(({ id }) => id).filter((id) => on.includes(id));
  return ids.length <= MOST_NAMED ? ids.join(', ') : '';
}

const MOST_NAMED = 12;

type Window = { readonly x: number; readonly y: number; readonly width: number; readonly height: number };

/** Each piece's name inside it, as large as goes; a piece too small for its name has none here and is in the cut list. */
function rowLabels(
  lay: LayPlan,
  lines: readonly PathItem[],
  paths: readonly PathItem[],
  at: { readonly x: number; readonly y: number; readonly from: number },
  window: Window,
  metrics: FontMetrics,
): Item[] {
  const taken = occupied({
    minX: window.x,
    minY: window.y,
    maxX: window.x + window.width,
    maxY: window.y + window.height,
  });
  const onPage = (path: PathItem) => placePath(path, { x: at.x - at.from, y: at.y });
  const moved = paths.map(onPage);
  for (const path of lines) taken.addLine(flattenPath(onPage(path)));
  return numbered(lay).flatMap((one, index) => {
    const path = moved[index]!;
    const box = boxOfPoints(flattenPath(path));
    const middle = centroid({ segments: path.segments as [(typeof path.segments)[number]] });
    const many = lay.placements.filter(({ piece }) => piece === one.piece).length > 1;
    for (const words of [many ? `${one.piece} · ${one.copy}` : one.piece, one.piece])
      for (const capital of [CAPITAL.lead, CAPITAL.body, CAPITAL.small]) {
        const size = sizeFor(metrics, capital);
        const room = {
          width: widthOf(words, metrics, { capital }) + 1,
          height: size * (metrics.ascent + metrics.descent),
        };
        if (room.width > box.maxX - box.minX || room.height > box.maxY - box.minY) continue;
        const reach = Math.max(0, (box.maxX - box.minX) / 2);
        const found = taken.free(boxAround(middle, room))
          ? middle
          : placeNear(taken, middle, room, { from: 2, to: reach });
        if (found === undefined || !within(found, box)) continue;
        taken.addBox(boxAround(found, room));
        const base = point(found.x, found.y - (size * (metrics.ascent - metrics.descent)) / 2);
        return [text(words, base, metrics, { capital, anchor: 'middle' })];
      }
    return [];
  });
}

const within = (
  p: { readonly x: number; readonly y: number },
  box: ReturnType<typeof boxOfPoints>,
): boolean => p.x > box.minX && p.x < box.maxX && p.y > box.minY && p.y < box.maxY;

/** Ticks under the roll at every half metre, or foot, of its length. */
function ruler(
  lay: LayPlan,
  scale: number,
  at: { readonly from: number },
  window: Window,
  input: SheetInput,
): Item[] {
  const { metrics, units, language } = input.options;
  const unit = units === 'in' ? 304.8 : 500;
  const stride = Math.max(1, Math.ceil(16 / (unit * scale)));
  const ticks: Item[] = [];
  for (
    let k = Math.ceil(at.from / scale / unit - 1e-9);
    k * unit * scale <= at.from + window.width + 1e-9;
    k++
  ) {
    if (k * unit > drawnLength(lay) + 1e-9) break;
    const x = window.x + k * unit * scale - at.from;
    ticks.push(lineAt(x, window.y - 1.6, x, window.y, STYLE.dimension));
    if (k % stride !== 0) continue;
    const words = units === 'in' ? `${k} ft` : figureText(`${(k / 2).toFixed(1)} m`, language);
    ticks.push(
      text(words, point(x, window.y - 5.4), metrics, {
        capital: CAPITAL.small,
        anchor: 'middle',
        colour: INK.soft,
      }),
    );
  }
  return ticks;
}

function widthMark(lay: LayPlan, window: Window, input: SheetInput): Item {
  const { metrics, units } = input.options;
  const words = lengthText(lay.rollWidth, units);
  const fitted = oneLine(words, window.height, metrics, { most: CAPITAL.small, least: 1.2 });
  return text(fitted.words, point(window.x - 3.5, window.y + window.height / 2), metrics, {
    ...{ capital: fitted.capital, anchor: 'middle', turn: Math.PI / 2, colour: INK.soft },
  });
}

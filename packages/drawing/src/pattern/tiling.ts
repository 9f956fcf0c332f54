import type { Point } from '@panewright/geometry';
import { clipSegment } from '../clip.ts';
import { PAPERS, type Paper, type PaperName, ROLL_WIDTHS } from '../paper.ts';
import { type Box, boxOfPoints } from '../path.ts';

/** How far neighbouring tiles show the same part of the pattern, mm. */
export const OVERLAP = 12;

/** Clear paper around the window of a tile, mm. */
export interface Margin {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly foot: number;
}

/** On a cut sheet the foot holds the tile's name, a bar and a check square. */
const SHEET_MARGIN: Margin = { left: 10, right: 10, top: 10, foot: 27 };
/** On a roll the name, a long bar and a large square stand where they take none of its width. */
const ROLL_MARGIN = {
  upright: { left: 10, right: 10, top: 10, foot: 124 },
  across: { left: 10, right: 124, top: 10, foot: 10 },
} as const;
/** Longest side of a page, mm. @source sources.md#iso-32000-limit */
const LONGEST_PAGE = ROLL_WIDTHS.most;

export interface Tile {
  /** From the top, 0 first. */
  readonly row: number;
  /** From the left, 0 first. */
  readonly column: number;
  /** `A1`: row by letter from the top, column by number from the left. */
  readonly label: string;
  /** What the tile shows, in pattern coordinates. */
  readonly window: Box;
  readonly printed: boolean;
}

export interface Tiling {
  readonly paper: { readonly width: number; readonly height: number };
  readonly margin: Margin;
  /** Drawn on a roll, with the roll's own marks to measure. */
  readonly roll: boolean;
  readonly orientation: 'upright' | 'across';
  readonly columns: number;
  readonly rows: number;
  readonly tiles: readonly Tile[];
  /** Middle lines of the overlaps, where registration marks sit: between columns, and between rows from the top. */
  readonly joinsX: readonly number[];
  readonly joinsY: readonly number[];
}

interface Way extends Pick<Tiling, 'orientation' | 'paper' | 'margin' | 'roll'> {
  readonly slides: readonly number[];
}

/**
 * Fewest tiles that show every line: paper upright and across, the grid slid to either side and centred, tiles that show
 * nothing left out; of as many tiles, those that take the least paper.
 *
 * A roll gives one page as long as the pattern, the pattern along it or across it. No page is longer than 5080 mm, the
 * most a PDF page has in plain units: a longer pattern goes on over several pages of one length, joined like tiles.
 *
 * @param lines polylines in pattern coordinates, mm
 * @source sources.md#iso-32000-limit
 */
export function tile(lines: readonly (readonly Point[])[], paper: Paper): Tiling {
  const box = grow(boxOfPoints(lines.flat()), 1);
  const ways = typeof paper === 'string' ? sheetWays(paper) : rollWays(box, paper.width);
  const tilings = ways.flatMap((way) =>
    way.slides.flatMap((slideX) => way.slides.map((slideY) => grid(lines, box, way, slideX, slideY))),
  );
  return tilings.reduce((best, one) => (rank(one) < rank(best) - 1e-9 ? one : best));
}

/** Tiles first, then square metres: paper is far under a tile's worth of either. */
const rank = (one: Tiling): number =>
  printedCount(one) * (1 + (one.roll ? (one.paper.width * one.paper.height) / 1e9 : 0));

function sheetWays(paper: PaperName): readonly Way[] {
  const { width, height } = PAPERS[paper];
  const same = { margin: SHEET_MARGIN, roll: false, slides: [0.5, 0, 1] };
  return [
    { ...same, orientation: 'upright', paper: { width, height } },
    { ...same, orientation: 'across', paper: { width: height, height: width } },
  ];
}

function rollWays(box: Box, width: number): readonly Way[] {
  const same = { roll: true, slides: [0.5] };
  const { upright, across } = ROLL_MARGIN;
  const high = pageLength(box.maxY - box.minY, upright.top + upright.foot);
  const long = pageLength(box.maxX - box.minX, across.left + across.right);
  return [
    { ...same, orientation: 'upright', margin: upright, paper: { width, height: high } },
    { ...same, orientation: 'across', margin: across, paper: { width: long, height: width } },
  ];
}

/** Length of each page for something so long, all pages alike, mm. */
function pageLength(length: number, margins: number): number {
  const count = Math.max(1, Math.ceil((length - OVERLAP) / (LONGEST_PAGE - margins - OVERLAP) - 1e-9));
  return (length + (count - 1) * OVERLAP) / count + margins;
}

export const printedCount = ({ tiles }: Tiling): number => tiles.filter(({ printed }) => printed).length;

const grow = (box: Box, by: number): Box => ({
  minX: box.minX - by,
  minY: box.minY - by,
  maxX: box.maxX + by,
  maxY: box.maxY + by,
});

function grid(
  lines: readonly (readonly Point[])[],
  box: Box,
  { orientation, paper, margin, roll }: Way,
  slideX: number,
  slideY: number,
): Tiling {
  const across = axis(box.minX, box.maxX, paper.width - margin.left - margin.right, slideX);
  const up = axis(box.minY, box.maxY, paper.height - margin.top - margin.foot, slideY);
  const tiles: Tile[] = [];
  for (let row = 0; row < up.count; row++)
    for (let column = 0; column < across.count; column++) {
      const fromFoot = up.count - 1 - row;
      const cell = {
        ...{ minX: across.cell(column)[0], maxX: across.cell(column)[1] },
        ...{ minY: up.cell(fromFoot)[0], maxY: up.cell(fromFoot)[1] },
      };
      tiles.push({
        row,
        column,
        label: `${rowName(row)}${column + 1}`,
        window: {
          ...{ minX: across.window(column)[0], maxX: across.window(column)[1] },
          ...{ minY: up.window(fromFoot)[0], maxY: up.window(fromFoot)[1] },
        },
        printed: lines.some((one) => crosses(one, cell)),
      });
    }
  return {
    ...{ paper, margin, roll, orientation, columns: across.count, rows: up.count, tiles },
    ...{ joinsX: across.joins, joinsY: up.joins.toReversed() },
  };
}

/** A, B … Z, AA, AB … */
function rowName(row: number): string {
  const letter = String.fromCharCode(65 + (row % 26));
  return row < 26 ? letter : rowName(Math.floor(row / 26) - 1) + letter;
}

/** Windows of `size` along one axis, each overlapping the next; cells share the axis out without overlap. */
function axis(low: number, high: number, size: number, slide: number) {
  const pitch = size - OVERLAP;
  const count = Math.max(1, Math.ceil((high - low - OVERLAP) / pitch - 1e-9));
  const slack = count * pitch + OVERLAP - (high - low);
  const origin = low - slack * slide;
  const window = (index: number) => [origin + index * pitch, origin + index * pitch + size] as const;
  return {
    count,
    window,
    cell: (index: number) => {
      const [from, to] = window(index);
      return [index === 0 ? from : from + OVERLAP / 2, index === count - 1 ? to : to - OVERLAP / 2] as const;
    },
    joins: Array.from({ length: count - 1 }, (_, index) => window(index)[1] - OVERLAP / 2),
  };
}

function crosses(points: readonly Point[], box: Box): boolean {
  for (let i = 1; i < points.length; i++) if (clipSegment(points[i - 1]!, points[i]!, box)) return true;
  return false;
}

import type { Point } from '@panewright/geometry';
import { clipSegment } from '../clip.ts';
import { type Box, boxOfPoints } from '../path.ts';
import { PAPERS, type PaperName } from '../sheet.ts';

/** How far neighbouring tiles show the same part of the pattern, mm. */
export const OVERLAP = 12;
/** Clear paper around the window of a tile, mm. The foot holds the tile's name and its check square. */
export const MARGIN = { side: 10, top: 10, foot: 27 } as const;

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
  readonly orientation: 'upright' | 'across';
  readonly columns: number;
  readonly rows: number;
  readonly tiles: readonly Tile[];
  /** Middle lines of the overlaps, where registration marks sit: between columns, and between rows from the top. */
  readonly joinsX: readonly number[];
  readonly joinsY: readonly number[];
}

/**
 * Fewest tiles that show every line: paper upright and across, the grid slid to either side and centred, tiles that show
 * nothing left out.
 *
 * @param lines polylines in pattern coordinates, mm
 */
export function tile(lines: readonly (readonly Point[])[], paper: PaperName): Tiling {
  const { width, height } = PAPERS[paper];
  const box = grow(boxOfPoints(lines.flat()), 1);
  const ways = [
    { orientation: 'upright', paper: { width, height } },
    { orientation: 'across', paper: { width: height, height: width } },
  ] as const;
  const tilings = ways.flatMap((way) =>
    [0.5, 0, 1].flatMap((slideX) =>
      [0.5, 0, 1].map((slideY) => grid(lines, box, way.orientation, way.paper, slideX, slideY)),
    ),
  );
  return tilings.reduce((best, one) => (printedCount(one) < printedCount(best) ? one : best));
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
  orientation: Tiling['orientation'],
  paper: Tiling['paper'],
  slideX: number,
  slideY: number,
): Tiling {
  const across = axis(box.minX, box.maxX, paper.width - 2 * MARGIN.side, slideX);
  const up = axis(box.minY, box.maxY, paper.height - MARGIN.top - MARGIN.foot, slideY);
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
    ...{ paper, orientation, columns: across.count, rows: up.count, tiles },
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
  const count = Math.max(1, Math.ceil((high - low - OVERLAP) / pitch));
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

import { type Block, baseline, beside, lineHeight, paragraph, stack } from './block.ts';
import { CAPITAL, INK, STYLE } from './ink.ts';
import { lineAt } from './path.ts';
import type { FontMetrics } from './sheet.ts';
import type { TextLook } from './text.ts';
import { text, wrap } from './text.ts';

export interface Column {
  readonly title: string;
  readonly width: number;
  readonly align?: 'start' | 'end';
}

/** What stands in a cell: words, or a drawing. */
export type Cell = string | Block;

const GAP = 3;
const PADDING = 1.1;

export interface TableLook {
  readonly capital?: number;
  readonly face?: 'regular' | 'bold';
  readonly ruled?: boolean;
}

/** Rows of a table. Each is one block; its heading is drawn again where a page begins. */
export function tableRows(
  columns: readonly Column[],
  rows: readonly (readonly Cell[])[],
  metrics: FontMetrics,
  look: TableLook = {},
): readonly Block[] {
  const width = columns.reduce((sum, one) => sum + one.width, 0);
  const titles = row(
    columns,
    columns.map((one) => one.title),
    metrics,
    {
      capital: CAPITAL.small,
      colour: INK.soft,
      face: 'bold',
    },
  );
  const heads: Block = { ...underline(titles, width, true), keepWithNext: true };
  return [
    heads,
    ...rows.map((cells) => ({
      ...underline(
        row(columns, cells, metrics, {
          capital: look.capital ?? CAPITAL.small,
          face: look.face ?? 'regular',
        }),
        width,
        false,
      ),
      heads,
    })),
  ];
}

function row(
  columns: readonly Column[],
  cells: readonly Cell[],
  metrics: FontMetrics,
  look: TextLook,
): Block {
  let at = 0;
  const parts = columns.map((column, index) => {
    const cell = cells[index] ?? '';
    const inner = column.width - (index === columns.length - 1 ? 0 : GAP);
    const block = typeof cell === 'string' ? cellText(cell, inner, metrics, look, column.align) : cell;
    const part = { at, block };
    at += column.width;
    return part;
  });
  return beside(parts);
}

/** Words of a cell, at its left or its right. */
export function cellText(
  words: string,
  width: number,
  metrics: FontMetrics,
  look: TextLook,
  align: 'start' | 'end' = 'start',
): Block {
  if (align === 'start') return stack(paragraph(words, width, metrics, look));
  const capital = look.capital ?? CAPITAL.body;
  const lines = wrap(words, width, metrics, look);
  return {
    height: lines.length * lineHeight(capital),
    draw: (x, top) =>
      lines.map((one, index) =>
        text(one, baseline(x + width, top - index * lineHeight(capital), capital), metrics, {
          ...look,
          anchor: 'end',
        }),
      ),
  };
}

function underline(block: Block, width: number, strong: boolean): Block {
  const height = block.height + 2 * PADDING;
  return {
    height,
    draw: (x, top) => [
      ...block.draw(x, top - PADDING),
      lineAt(x, top - height, x + width, top - height, strong ? STYLE.dimension : STYLE.rule),
    ],
  };
}

import { type Block, baseline, beside, lineHeight, paragraph, stack } from './block.ts';
import { CAPITAL, INK, STYLE } from './ink.ts';
import { lineAt } from './path.ts';
import type { FontMetrics } from './sheet.ts';
import type { TextLook } from './text.ts';
import { CLOSE, text, widthOf, wrap } from './text.ts';

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
  /** Lines closer together, for a form. */
  readonly close?: boolean;
}

/** Rows of a table. Each is one block; its heading is drawn again where a page begins. */
export function tableRows(
  columns: readonly Column[],
  rows: readonly (readonly Cell[])[],
  metrics: FontMetrics,
  look: TableLook = {},
): readonly Block[] {
  const width = columns.reduce((sum, one) => sum + one.width, 0);
  const lead = look.close ? { lead: CLOSE } : {};
  const padding = look.close ? PADDING / 2 : PADDING;
  const titles = row(
    columns,
    columns.map((one) => one.title),
    metrics,
    {
      ...lead,
      capital: titleCapital(columns, metrics, Math.min(CAPITAL.small, look.capital ?? CAPITAL.small)),
      colour: INK.soft,
      face: 'bold',
    },
  );
  const heads: Block = { ...underline(titles, width, true, padding), keepWithNext: true };
  return [
    heads,
    ...rows.map((cells) => ({
      ...underline(
        row(columns, cells, metrics, {
          ...lead,
          capital: look.capital ?? CAPITAL.small,
          face: look.face ?? 'regular',
        }),
        width,
        false,
        padding,
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
    const inner = column.width - (index === columns.length - 1 ? 0 : gapAfter(columns, index));
    const block = typeof cell === 'string' ? cellText(cell, inner, metrics, look, column.align) : cell;
    const part = { at, block };
    at += column.width;
    return part;
  });
  return beside(parts);
}

/** Titles a little smaller where a word of them is wider than its column: no word is broken that need not be. */
function titleCapital(columns: readonly Column[], metrics: FontMetrics, wanted: number): number {
  const fits = columns.flatMap(({ title, width }, index) => {
    const room = width - (index === columns.length - 1 ? 0 : gapAfter(columns, index));
    return title.split(' ').map((word) => room / widthOf(word, metrics, { capital: 1, face: 'bold' }));
  });
  return Math.max(LEAST_TITLE, Math.min(wanted, ...fits.filter((one) => one > 0)));
}

const LEAST_TITLE = 2;

/** What is set to the right of its column stands farther off from what begins beside it. */
const gapAfter = (columns: readonly Column[], index: number): number =>
  columns[index]!.align === 'end' && columns[index + 1]!.align !== 'end' ? 2 * GAP : GAP;

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
  const each = lineHeight(capital, look.lead);
  return {
    height: lines.length * each,
    draw: (x, top) =>
      lines.map((one, index) =>
        text(one, baseline(x + width, top - index * each, capital, look.lead), metrics, {
          ...look,
          anchor: 'end',
        }),
      ),
  };
}

function underline(block: Block, width: number, strong: boolean, padding: number): Block {
  const height = block.height + 2 * padding;
  return {
    height,
    draw: (x, top) => [
      ...block.draw(x, top - padding),
      lineAt(x, top - height, x + width, top - height, strong ? STYLE.dimension : STYLE.rule),
    ],
  };
}

import { point } from '@panewright/geometry';
import { CAPITAL, INK, STYLE } from './ink.ts';
import { enlarged, lineAt, rectangle, shiftItems } from './path.ts';
import type { FontMetrics, Item, Page } from './sheet.ts';
import { leading, sizeFor, type TextLook, text, wrap } from './text.ts';

/** A piece of a page that is not divided: `draw` puts it with its top-left corner at (x, top). */
export interface Block {
  readonly height: number;
  readonly draw: (x: number, top: number) => readonly Item[];
  /** Not left alone at the foot of a page. */
  readonly keepWithNext?: boolean;
  /** Drawn again above this block where it begins a page. */
  readonly heads?: Block;
  /** Begins a page. */
  readonly startsPage?: boolean;
  /** Left out at the head of a page. */
  readonly space?: boolean;
}

export const space = (height: number): Block => ({ height, draw: () => [], space: true });

export const rule = (width: number, gap = 2): Block => ({
  height: 2 * gap,
  draw: (x, top) => [lineAt(x, top - gap, x + width, top - gap, STYLE.rule)],
});

/** Room a line of text takes above and below its baseline, mm. */
export const lineHeight = leading;

/** Running text: one block a line, so that a page may end between lines. */
export function paragraph(
  words: string,
  width: number,
  metrics: FontMetrics,
  look: TextLook = {},
): readonly Block[] {
  const capital = look.capital ?? CAPITAL.body;
  const height = leading(capital, look.lead);
  return wrap(words, width, metrics, look).map((one) => ({
    height,
    draw: (x, top) => (one === '' ? [] : [text(one, baseline(x, top, capital, look.lead), metrics, look)]),
  }));
}

/** Where the baseline of a line of text is, below the top of its room. */
export const baseline = (x: number, top: number, capital: number, lead?: number) =>
  point(x, top - leading(capital, lead) * (1.42 / 1.9));

/** Blocks one above another, kept together on one page. */
export function stack(blocks: readonly Block[]): Block {
  const height = blocks.reduce((sum, one) => sum + one.height, 0);
  return {
    height,
    draw: (x, top) => {
      let down = top;
      return blocks.flatMap((one) => {
        const drawn = one.draw(x, down);
        down -= one.height;
        return drawn;
      });
    },
  };
}

/** Blocks side by side, tops level, at the given offsets. */
export function beside(parts: readonly { readonly at: number; readonly block: Block }[]): Block {
  return {
    height: Math.max(0, ...parts.map(({ block }) => block.height)),
    draw: (x, top) => parts.flatMap(({ at, block }) => block.draw(x + at, top)),
  };
}

export const indented = (block: Block, by: number): Block => ({
  ...block,
  draw: (x, top) => block.draw(x + by, top),
});

/** A drawing of known size, its own origin at its bottom-left corner. */
export const picture = (items: readonly Item[], height: number): Block => ({
  height,
  draw: (x, top) => shiftItems(items, x, top - height),
});

export function heading(words: string, width: number, metrics: FontMetrics): Block {
  const block = stack(paragraph(words, width, metrics, { capital: CAPITAL.heading, face: 'bold' }));
  return { ...block, height: block.height + 1.5, keepWithNext: true };
}

/** A caution: a bar and a wash behind it, so that it shows in one colour too. */
export function caution(words: string, width: number, metrics: FontMetrics, word: string): Block {
  const capital = CAPITAL.body;
  const [padding, bar] = [2.2, 1.6];
  const inner = width - 2 * padding - bar;
  const first = stack(
    paragraph(word, inner, metrics, { capital: CAPITAL.small, face: 'bold', colour: INK.warning }),
  );
  const body = stack(paragraph(words, inner, metrics, { capital }));
  const height = first.height + body.height + 2 * padding;
  return {
    height: height + 1.6,
    draw: (x, top) => [
      rectangle({ x, y: top - height, width, height }, { fill: INK.warningWash }),
      rectangle({ x, y: top - height, width: bar, height }, { fill: INK.warning }),
      ...first.draw(x + bar + padding, top - padding),
      ...body.draw(x + bar + padding, top - padding - first.height),
    ],
  };
}

export interface PageFrame {
  readonly width: number;
  readonly height: number;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  /** Everything is set on a page this much smaller and then enlarged: large type. 1 where not given. */
  readonly scale?: number;
  /** What stands on every page besides the blocks. `page` counts from 1. */
  readonly furniture: (page: number, pages: number) => readonly Item[];
}

export const innerWidth = (frame: PageFrame): number => frame.width - frame.left - frame.right;

/**
 * Blocks set on as many pages as they need.
 *
 * A block taller than a page is a fault of ours and throws: text is divided into lines, tables into rows.
 */
export function paginate(blocks: readonly Block[], frame: PageFrame): Page[] {
  const room = frame.height - frame.top - frame.bottom;
  const pages: Item[][] = [];
  let left = -1;
  const start = () => {
    pages.push([]);
    left = room;
  };
  const put = (block: Block) => {
    const top = frame.bottom + left;
    pages.at(-1)!.push(...block.draw(frame.left, top));
    left -= block.height;
  };
  blocks.forEach((block, index) => {
    const needed = block.height + (block.keepWithNext ? heightKept(blocks, index + 1) : 0);
    const empty = left === room;
    const fresh = left < 0 || (!empty && (needed > left + 1e-9 || block.startsPage === true));
    if (block.space && (fresh || empty)) {
      if (fresh) left = Math.min(left, 0);
      return;
    }
    if (fresh) {
      start();
      if (block.heads !== undefined) put(block.heads);
    }
    if (block.height > left + 1e-9)
      throw new RangeError(`A block of ${block.height} mm is taller than its page.`);
    put(block);
  });
  const { scale = 1 } = frame;
  return pages.map((items, index) => ({
    label: '',
    width: frame.width * scale,
    height: frame.height * scale,
    items: enlarged([...frame.furniture(index + 1, pages.length), ...items], scale),
  }));
}

/** Sizes of type a page may be set in to stay one page: the least is still read at arm's length. */
const FITTING = [2.5, 2.4, 2.3, 2.2] as const;

/**
 * Blocks in the largest type that leaves them on one page; in the largest, on more pages, where none does.
 *
 * @param make told whether they fit, so that it can begin a page where that reads best
 */
export function onOnePage(
  make: (capital: number, fits: boolean) => readonly Block[],
  frame: PageFrame,
  sizes: readonly [number, ...number[]] = FITTING,
): readonly Block[] {
  const room = frame.height - frame.top - frame.bottom;
  for (const capital of sizes) {
    const blocks = make(capital, true);
    if (blocks.reduce((sum, { height }) => sum + height, 0) <= room) return blocks;
  }
  return make(sizes[0], false);
}

function heightKept(blocks: readonly Block[], from: number): number {
  let sum = 0;
  for (let i = from; i < blocks.length; i++) {
    sum += blocks[i]!.height;
    if (!blocks[i]!.keepWithNext) break;
  }
  return sum;
}

/** Text on one line: as large as fits between two sizes of capital, then cut short with an ellipsis. */
export function oneLine(
  words: string,
  width: number,
  metrics: FontMetrics,
  sizes: { readonly most: number; readonly least: number },
  look: TextLook = {},
): { readonly words: string; readonly capital: number } {
  const unit = metrics.width(words, look.face ?? 'regular') / metrics.capital;
  if (unit * sizes.least <= width) return { words, capital: Math.min(sizes.most, width / unit) };
  const letters = [...words];
  while (letters.length > 1) {
    letters.pop();
    const cut = `${letters.join('').trimEnd()}…`;
    if ((metrics.width(cut, look.face ?? 'regular') / metrics.capital) * sizes.least <= width)
      return { words: cut, capital: sizes.least };
  }
  return { words: '…', capital: sizes.least };
}

export const textHeight = (metrics: FontMetrics, capital: number): number =>
  sizeFor(metrics, capital) * (metrics.ascent + metrics.descent);

import { point } from '@panewright/geometry';
import { ok, type Result, refuse } from '@panewright/quantity';
import { oneLine, textHeight } from '../block.ts';
import { INK, STYLE } from '../ink.ts';
import { PAPERS } from '../paper.ts';
import { group, lineAt, rectangle } from '../path.ts';
import type { FontMetrics, Item, Page, Rectangle, TextItem } from '../sheet.ts';
import { fitText, leading, sizeFor, text } from '../text.ts';
import { type LabelStock, labelsOn } from './labelStock.ts';
import { type QrCode, withQuiet } from './qrCode.ts';

/** Which panel a label is for. */
export interface LabelledPanel {
  readonly job: string;
  readonly opening: string;
  readonly revision: string;
}

export interface LabelOptions {
  /** A shelf label is stuck on; a sewn-in one has a clear strip along its upper edge for the seam. */
  readonly kind: 'shelf' | 'sewn';
  readonly stock: LabelStock;
  /** The first label to print on, from 1: left to right, then down. Sheets begun before are used up. */
  readonly start?: number;
  /** Labels of each panel, 1 where not given. */
  readonly copies?: number;
  /** What a phone opens: an address of the panel in the job. Without it the code says job, opening and revision. */
  readonly link?: (panel: LabelledPanel) => string;
  /** Draws each label's edge, for plain paper that is cut by hand. */
  readonly edges?: boolean;
}

export type LabelRefusal =
  | { readonly code: 'LABEL_START_OUT_OF_RANGE'; readonly start: number; readonly most: number }
  | { readonly code: 'LABEL_COPIES_OUT_OF_RANGE'; readonly copies: number; readonly most: number }
  | { readonly code: 'LABEL_TOO_SMALL_FOR_CODE'; readonly module: number; readonly least: number };

/** Smallest module a phone reads surely off an office printer, mm. Common practice, no source. */
const LEAST_MODULE = 0.33;
const MOST_COPIES = 50;
/** Strip for the seam of a sewn-in label, mm. */
const SEAM = 6;

/** What one label says. */
export interface LabelContent {
  readonly name: string;
  readonly lines: readonly string[];
  readonly code: QrCode;
}

/**
 * Labels laid out on their sheets.
 *
 * @refuses LABEL_START_OUT_OF_RANGE, LABEL_COPIES_OUT_OF_RANGE, LABEL_TOO_SMALL_FOR_CODE
 */
export function labelPages(
  contents: readonly LabelContent[],
  metrics: FontMetrics,
  options: LabelOptions,
): Result<Page[], LabelRefusal> {
  const { stock, start = 1, copies = 1 } = options;
  const most = labelsOn(stock);
  if (!(Number.isInteger(start) && start >= 1 && start <= most))
    return refuse({ code: 'LABEL_START_OUT_OF_RANGE', start, most });
  if (!(Number.isInteger(copies) && copies >= 1 && copies <= MOST_COPIES))
    return refuse({ code: 'LABEL_COPIES_OUT_OF_RANGE', copies, most: MOST_COPIES });
  const side = codeSide(options);
  const module = Math.min(Infinity, ...contents.map(({ code }) => side / withQuiet(code)));
  if (module < LEAST_MODULE) return refuse({ code: 'LABEL_TOO_SMALL_FOR_CODE', module, least: LEAST_MODULE });
  const all = contents.flatMap((label) => Array.from({ length: copies }, () => label));
  return ok(pages(all, metrics, options));
}

function pages(labels: readonly LabelContent[], metrics: FontMetrics, options: LabelOptions): Page[] {
  const { stock, start = 1 } = options;
  const { width, height } = PAPERS[stock.paper];
  const count = Math.ceil((labels.length === 0 ? 0 : labels.length + start - 1) / labelsOn(stock));
  return Array.from({ length: count }, (_, page): Page => {
    const first = page * labelsOn(stock) - (start - 1);
    const items = labels
      .slice(Math.max(0, first), first + labelsOn(stock))
      .flatMap((one, index) =>
        label(one, place(Math.max(0, first) + index - first, stock), metrics, options),
      );
    return { label: '', width, height, items };
  });
}

/** Where a label is on its sheet, from 0, left to right, then down. */
function place(index: number, stock: LabelStock): Rectangle {
  const [column, row] = [index % stock.columns, Math.floor(index / stock.columns)];
  const top = PAPERS[stock.paper].height - stock.margin.top - row * stock.pitch.y;
  const x = stock.margin.left + column * stock.pitch.x;
  return { x, y: top - stock.height, width: stock.width, height: stock.height };
}

const padding = ({ height }: LabelStock): number => (height < 30 ? 2 : 3);
const headroom = (kind: LabelOptions['kind']): number => (kind === 'sewn' ? SEAM : 0);

/** Side of the code with its quiet zone: the label's height, two fifths of its width at the most. The quiet zone is its own margin. */
const codeSide = ({ stock, kind }: LabelOptions): number =>
  Math.min(stock.height - headroom(kind) - 1, stock.width * 0.45);

function label(
  content: LabelContent,
  box: Rectangle,
  metrics: FontMetrics,
  options: LabelOptions,
): readonly Item[] {
  const { kind, stock, edges = false } = options;
  const side = codeSide(options);
  const pad = padding(stock);
  const high = box.height - headroom(kind);
  const seam = box.y + box.height - SEAM;
  const area = {
    x: box.x + pad + 1,
    y: box.y + pad,
    width: box.width - side - pad - 1.5,
    height: high - 2 * pad,
  };
  return [
    ...(edges ? [group('frame', [rectangle(box, { line: STYLE.frame })])] : []),
    ...(kind === 'sewn'
      ? [group('stitch', [lineAt(box.x + 2, seam, box.x + box.width - 2, seam, STYLE.stitch)])]
      : []),
    group('mark', content.code.draw(box.x + box.width - side - 0.5, box.y + (high - side) / 2, side)),
    group('text', written(content, area, metrics)),
  ];
}

/** The name as large as goes, then as many of the other lines as there is room for. */
function written({ name, lines }: LabelContent, area: Rectangle, metrics: FontMetrics): readonly TextItem[] {
  const share = { width: area.width, height: area.height * 0.5 };
  const title = fitText(name, share, metrics, { most: 6, least: 1.6 }, { face: 'bold' }) ?? {
    ...{ lines: [oneLine(name, area.width, metrics, { most: 1.6, least: 1.6 }, { face: 'bold' }).words] },
    capital: 1.6,
  };
  const top = area.y + area.height;
  const size = sizeFor(metrics, title.capital);
  const heads = title.lines.map((one, index) =>
    text(one, point(area.x, top - size * metrics.ascent - index * leading(title.capital)), metrics, {
      ...{ capital: title.capital, face: 'bold' },
    }),
  );
  let down = (title.lines.length - 1) * leading(title.capital) + textHeight(metrics, title.capital) + 0.8;
  // All alike, unless one is so long that the others would be hard to read.
  const alike = Math.max(
    1.8,
    Math.min(...lines.map((one) => oneLine(one, area.width, metrics, { most: 2.6, least: 1.5 }).capital)),
  );
  const rest: TextItem[] = [];
  for (const line of lines) {
    const fitted = oneLine(line, area.width, metrics, { most: alike, least: 1.5 });
    const height = textHeight(metrics, fitted.capital);
    if (down + height > area.height) break;
    const base = top - down - sizeFor(metrics, fitted.capital) * metrics.ascent;
    rest.push(text(fitted.words, point(area.x, base), metrics, { capital: fitted.capital, colour: INK.ink }));
    down += height + 0.5;
  }
  return [...heads, ...rest];
}

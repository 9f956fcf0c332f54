import type { StripPlan } from '@panewright/design';
import { bounds } from '@panewright/geometry';
import { type Block, heading, innerWidth, paginate, paragraph, space } from '../block.ts';
import { lengthText, sizeText, stockText, tenths } from '../figures.ts';
import { CAPITAL, INK } from '../ink.ts';
import type { SheetInput } from '../options.ts';
import { readingFrame } from '../pageFrame.ts';
import type { Sheet, Table } from '../sheet.ts';
import { tableRows } from '../table.ts';
import type { Words } from '../words.ts';
import { wordsOf } from '../wordsOf.ts';

/** Pieces of cloth to cut, and which lengths come off which roll. Undefined while there is no lay. */
export function cutList(input: SheetInput): Sheet | undefined {
  const { cutting } = input.plan;
  if (cutting === null) return undefined;
  const words = wordsOf(input.options);
  const title = words.cut.title();
  const frame = readingFrame(input, title);
  const { metrics } = input.options;
  const width = innerWidth(frame);
  const blocks: Block[] = [
    ...paragraph(title, width, metrics, { capital: CAPITAL.small, face: 'bold', colour: INK.accent }),
    ...paragraph(input.job.name, width, metrics, { capital: CAPITAL.title, face: 'bold' }),
    ...pieces(input, width, words),
    ...cutting.strips.flatMap((strip) => stripBlocks(strip, input, width, words)),
  ];
  return {
    path: 'cut-list',
    title: `${title}: ${input.job.name}`,
    symbols: {},
    pages: paginate(blocks, frame),
    table: csv(input, words),
  };
}

function pieces(input: SheetInput, width: number, words: Words): readonly Block[] {
  const { metrics, units } = input.options;
  const all = input.plan.cutting?.pieces ?? [];
  if (all.length === 0) return [space(4), ...paragraph(words.cut.nothing(), width, metrics)];
  const columns = [
    { title: words.cut.piece(), width: width * 0.24 },
    { title: words.cut.count(), width: width * 0.1, align: 'end' as const },
    { title: words.cut.size(), width: width * 0.28, align: 'end' as const },
    { title: words.cut.cloth(), width: width * 0.38 },
  ];
  const rows = all.map((one) => {
    const box = bounds(one.outline);
    const cloth = input.catalogue.fabrics.find(({ id }) => id === one.fabric)?.name ?? one.fabric;
    const piece = one.turnedOver ? words.pattern.turnedOver(one.piece) : one.piece;
    return [piece, `${one.count} ×`, sizeText(box.width, box.height, units), cloth];
  });
  return [space(5), heading(words.cut.pieces(), width, metrics), ...tableRows(columns, rows, metrics)];
}

function stripBlocks(strip: StripPlan, input: SheetInput, width: number, words: Words): readonly Block[] {
  const { metrics, units, language } = input.options;
  const columns = [
    { title: words.cut.roll(), width: width * 0.1 },
    { title: words.cut.lengths(), width: width * 0.7 },
    { title: words.cut.left(), width: width * 0.2, align: 'end' as const },
  ];
  const rows = strip.stocks.flatMap((stock, index) =>
    inParts(grouped(stock.cuts), MOST_IN_ROW).map((part, at) => [
      at === 0 ? String(index + 1) : '',
      part
        .map(({ count, length, for: whom }) =>
          words.cut.lengthFor(count, lengthText(length, units), nameOf(whom, input)),
        )
        .join('; '),
      at === 0 ? stockText(stock.left, units, language) : '',
    ]),
  );
  const name = materialName(strip, input);
  return [
    space(5),
    heading(words.cut.strip(strip.kind, name), width, metrics),
    ...paragraph(words.cut.stock(stockText(strip.stockLength, units, language)), width, metrics, {
      ...{ capital: CAPITAL.small, colour: INK.soft },
    }),
    ...tableRows(columns, rows, metrics),
  ];
}

/** The opening a length is for, by the name it has in the job. */
const nameOf = (whom: string, { plan }: SheetInput): string =>
  plan.openings.find(({ opening }) => opening === whom)?.name ?? whom;

/** Lengths named in one row of the table: a row is not divided between pages. */
const MOST_IN_ROW = 24;

const inParts = <T>(all: readonly T[], most: number): readonly (readonly T[])[] =>
  Array.from({ length: Math.ceil(all.length / most) }, (_, index) =>
    all.slice(index * most, (index + 1) * most),
  );

function materialName({ material, kind }: StripPlan, { catalogue }: SheetInput): string {
  const list = { binding: catalogue.bindings, wrapFilm: catalogue.wrapFilms, tape: catalogue.tapes }[kind];
  return list.find(({ id }) => id === material)?.name ?? material;
}

/** Equal lengths for one purpose are one entry. */
function grouped(cuts: StripPlan['stocks'][number]['cuts']) {
  const groups = new Map<string, { count: number; length: number; for: string }>();
  for (const cut of cuts) {
    const key = `${cut.length.toFixed(3)} ${cut.for}`;
    const group = groups.get(key);
    if (group) group.count += 1;
    else groups.set(key, { count: 1, length: cut.length, for: cut.for });
  }
  return [...groups.values()];
}

function csv(input: SheetInput, words: Words): Table {
  const cutting = input.plan.cutting;
  const pieceRows = (cutting?.pieces ?? []).map((one) => {
    const box = bounds(one.outline);
    return [
      'piece',
      one.fabric,
      one.piece,
      one.count,
      tenths(box.width),
      tenths(box.height),
      one.openings.join(' '),
    ];
  });
  const stripRows = (cutting?.strips ?? []).flatMap((strip) =>
    strip.stocks.flatMap((stock, roll) =>
      stock.cuts.map((cut) => [
        strip.kind,
        strip.material,
        `${roll + 1}`,
        1,
        tenths(cut.length),
        '',
        cut.for,
      ]),
    ),
  );
  return { header: words.cut.csv(), rows: [...pieceRows, ...stripRows] };
}

import type { TakeOffLine } from '@panewright/design';
import { type Block, heading, innerWidth, paginate, paragraph, space } from '../block.ts';
import { lengthText, majorUnits, moneyText, stockText, tenths } from '../figures.ts';
import { CAPITAL, INK } from '../ink.ts';
import type { SheetInput } from '../options.ts';
import { readingFrame } from '../pageFrame.ts';
import type { Sheet, Table } from '../sheet.ts';
import { tableRows } from '../table.ts';
import type { Words } from '../words.ts';
import { wordsOf } from '../wordsOf.ts';

/** What to order, by supplier, in whole packs, with what will be left over. Undefined while there is no take-off. */
export function buyList(input: SheetInput): Sheet | undefined {
  const { takeOff } = input.plan;
  if (takeOff === null) return undefined;
  const words = wordsOf(input.options);
  const title = words.buy.title();
  const frame = readingFrame(input, title);
  const { metrics } = input.options;
  const width = innerWidth(frame);
  const suppliers = [...new Set(takeOff.materials.map(({ supplier }) => supplier))];
  const total = takeOff.materials.reduce((sum, one) => sum + one.costBought.value, 0);
  const blocks: Block[] = [
    ...paragraph(title, width, metrics, { capital: CAPITAL.small, face: 'bold', colour: INK.accent }),
    ...paragraph(input.job.name, width, metrics, { capital: CAPITAL.title, face: 'bold' }),
    ...suppliers.flatMap((supplier) =>
      supplierBlocks(
        supplier,
        takeOff.materials.filter((one) => one.supplier === supplier),
        input,
        width,
        words,
      ),
    ),
    space(5),
    ...paragraph(
      words.buy.total(moneyText(total, input.catalogue.currency, input.options.language)),
      width,
      metrics,
      {
        face: 'bold',
      },
    ),
    ...paragraph(words.buy.note(), width, metrics, { capital: CAPITAL.small, colour: INK.soft }),
  ];
  return {
    path: 'buy-list',
    title: `${title}: ${input.job.name}`,
    symbols: {},
    pages: paginate(blocks, frame),
    table: csv(takeOff.materials, input, words),
  };
}

function supplierBlocks(
  supplier: string,
  lines: readonly TakeOffLine[],
  input: SheetInput,
  width: number,
  words: Words,
): readonly Block[] {
  const { metrics } = input.options;
  const { currency } = input.catalogue;
  const columns = [
    { title: words.buy.item(), width: width * 0.4 },
    { title: words.buy.used(), width: width * 0.13, align: 'end' as const },
    { title: words.buy.buy(), width: width * 0.19, align: 'end' as const },
    { title: words.buy.left(), width: width * 0.14, align: 'end' as const },
    { title: words.buy.cost(), width: width * 0.14, align: 'end' as const },
  ];
  const rows = lines.map((one) => [
    itemName(one, input, words),
    amount(one, one.used.value, input),
    words.buy.packs(one.packs.value, amount(one, one.pack.quantity, input)),
    amount(one, one.left, input),
    moneyText(one.costBought.value, currency, input.options.language),
  ]);
  return [
    space(5),
    heading(supplier === '' ? words.buy.noSupplier() : supplier, width, metrics),
    ...tableRows(columns, rows, metrics),
  ];
}

function itemName(one: TakeOffLine, input: SheetInput, words: Words): string {
  if (one.kind !== 'fabric') return one.name;
  const lay = input.plan.cutting?.lays.find(
    ({ fabric, length, offcut }) => !offcut && fabric === one.item && length.value === one.used.value,
  );
  return lay === undefined
    ? one.name
    : words.buy.roll(one.name, lengthText(lay.rollWidth, input.options.units));
}

const amount = (one: TakeOffLine, value: number, input: SheetInput): string =>
  one.used.unit === 'mm'
    ? stockText(value, input.options.units, input.options.language)
    : String(Math.round(value));

function csv(lines: readonly TakeOffLine[], { catalogue }: SheetInput, words: Words): Table {
  const { currency } = catalogue;
  const money = (value: number) => majorUnits(value, currency);
  return {
    header: words.buy.csv(currency.code),
    rows: lines.map((one) => [
      ...[one.supplier, one.item, one.name, one.used.unit === 'mm' ? 'mm' : 'pieces'],
      ...[tenths(one.used.value), one.packs.value, one.pack.quantity, tenths(one.left)],
      ...[money(one.pack.price), money(one.costBought.value)],
    ]),
  };
}

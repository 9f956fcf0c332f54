import type { PricePlan, TakeOffPlan } from '@panewright/design';
import { type Block, heading, innerWidth, paginate, paragraph, space } from '../block.ts';
import { majorUnits, minutesText, moneyText, percentText, stockText, timesText } from '../figures.ts';
import { CAPITAL, INK } from '../ink.ts';
import type { SheetInput } from '../options.ts';
import { pageFrame } from '../pageFrame.ts';
import type { Sheet, Table } from '../sheet.ts';
import { tableRows } from '../table.ts';
import type { Words } from '../words.ts';
import { wordsOf } from '../wordsOf.ts';
import { perOf } from '../work/perOf.ts';

/** The shop's own page of the quote: what each material and each operation costs, and what is left. Undefined while there is no price. */
export function costSheet(input: SheetInput): Sheet | undefined {
  const { price, takeOff } = input.plan;
  if (price === null || takeOff === null) return undefined;
  const words = wordsOf(input.options);
  const title = words.costs.title();
  const frame = pageFrame(input, title);
  const { metrics } = input.options;
  const width = innerWidth(frame);
  const blocks: Block[] = [
    ...paragraph(title, width, metrics, { capital: CAPITAL.small, face: 'bold', colour: INK.accent }),
    ...paragraph(input.job.name, width, metrics, { capital: CAPITAL.title, face: 'bold' }),
    ...paragraph(words.costs.about(), width, metrics, { capital: CAPITAL.small, colour: INK.soft }),
    ...materials(input, takeOff, width, words),
    ...labour(input, takeOff, width, words),
    ...sums(input, price, takeOff, width, words),
  ];
  return {
    ...{ path: 'costs', title: `${title}: ${input.job.name}`, symbols: {} },
    pages: paginate(blocks, frame),
    table: csv(input, price, takeOff, words),
  };
}

function materials(input: SheetInput, takeOff: TakeOffPlan, width: number, words: Words): readonly Block[] {
  const { metrics, units, language } = input.options;
  const { currency } = input.catalogue;
  const columns = [
    { title: words.buy.item(), width: width * 0.46 },
    { title: words.buy.used(), width: width * 0.18, align: 'end' as const },
    { title: words.costs.bought(), width: width * 0.18, align: 'end' as const },
    { title: words.costs.charged(), width: width * 0.18, align: 'end' as const },
  ];
  const rows = takeOff.materials.map((one) => [
    one.name,
    one.used.unit === 'mm' ? stockText(one.used.value, units, language) : String(Math.round(one.used.value)),
    moneyText(one.costBought.value, currency, language),
    moneyText(one.costCharged.value, currency, language),
  ]);
  return [
    space(3),
    heading(words.costs.material(), width, metrics),
    ...tableRows(columns, rows, metrics, { close: true }),
  ];
}

function labour(input: SheetInput, takeOff: TakeOffPlan, width: number, words: Words): readonly Block[] {
  const { metrics, units, language } = input.options;
  const { currency, rates } = input.catalogue;
  const columns = [
    { title: words.work.operation(), width: width * 0.46 },
    { title: words.work.times(), width: width * 0.18, align: 'end' as const },
    { title: words.work.estimated(), width: width * 0.18, align: 'end' as const },
    { title: words.buy.cost(), width: width * 0.18, align: 'end' as const },
  ];
  const rows = takeOff.labour.map((one) => [
    one.name,
    timesText(one.times, perOf(input, one.operation), units, language),
    minutesText(one.minutes.value),
    moneyText((one.minutes.value / 60) * rates.labour, currency, language),
  ]);
  return [
    space(3),
    heading(words.costs.labour(), width, metrics),
    ...tableRows(columns, rows, metrics, { close: true }),
  ];
}

function sums(
  input: SheetInput,
  price: PricePlan,
  takeOff: TakeOffPlan,
  width: number,
  words: Words,
): readonly Block[] {
  const { metrics, language } = input.options;
  const { rates } = input.catalogue;
  const money = (value: number) => moneyText(value, price.currency, language);
  const percent = (ratio: number) => percentText(ratio, language);
  const columns = [
    { title: '', width: width * 0.64 },
    { title: words.buy.cost(), width: width * 0.36, align: 'end' as const },
  ];
  const rows = [
    [words.costs.material(), money(price.material.value)],
    [
      words.costs.labourOf(minutesText(takeOff.minutes.value), money(rates.labour)),
      money(price.labour.value),
    ],
    [words.costs.overhead(percent(rates.overhead)), money(price.overhead.value)],
    [words.costs.cost(), money(price.cost.value)],
    [words.costs.price(percent(rates.markup)), money(price.price.value)],
    [words.costs.margin(percent(price.margin)), money(price.price.value - price.cost.value)],
    [words.quote.tax(percent(rates.tax)), money(price.tax.value)],
    [words.quote.total(), money(price.total.value)],
  ];
  return [
    space(3),
    heading(words.costs.sums(), width, metrics),
    ...tableRows(columns, rows, metrics, { close: true }),
  ];
}

function csv(input: SheetInput, price: PricePlan, takeOff: TakeOffPlan, words: Words): Table {
  const money = (value: number) => majorUnits(value, price.currency);
  return {
    header: words.costs.csv(price.currency.code),
    rows: [
      ...takeOff.materials.map((one) => [
        'material',
        one.name,
        one.used.value,
        '',
        money(one.costCharged.value),
      ]),
      ...takeOff.labour.map((one) => [
        ...['labour', one.name, one.times, one.minutes.value],
        money((one.minutes.value / 60) * input.catalogue.rates.labour),
      ]),
      ['sum', words.costs.overhead(''), '', '', money(price.overhead.value)],
      ['sum', words.costs.cost(), '', takeOff.minutes.value, money(price.cost.value)],
      ['sum', words.costs.price(''), '', '', money(price.price.value)],
      ['sum', words.quote.tax(''), '', '', money(price.tax.value)],
      ['sum', words.quote.total(), '', '', money(price.total.value)],
    ].map((row) => row.map((cell) => (typeof cell === 'string' ? cell.trim() : cell))),
  };
}

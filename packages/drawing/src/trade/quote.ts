import type { PricePlan } from '@panewright/design';
import { point } from '@panewright/geometry';
import {
  type Block,
  beside,
  innerWidth,
  paginate,
  paragraph,
  picture,
  rule,
  space,
  stack,
} from '../block.ts';
import {
  dateText,
  dayAfter,
  majorUnits,
  moneyText,
  percentText,
  sizeText,
  tenths,
  tint,
} from '../figures.ts';
import { imageSize } from '../imageSize.ts';
import { CAPITAL, INK } from '../ink.ts';
import type { SheetInput } from '../options.ts';
import { pageFrame } from '../pageFrame.ts';
import { panelPicture } from '../panel/panelPicture.ts';
import type { Item, Sheet, Table } from '../sheet.ts';
import { type Cell, cellText, tableRows } from '../table.ts';
import type { TextLook } from '../text.ts';
import type { Words } from '../words.ts';
import { wordsOf } from '../wordsOf.ts';
import { materialsNamed } from '../work/materialsOf.ts';
import { offerBlocks, offerRows } from './offers.ts';

/** The customer's page: openings, sizes, prices, tax, total, how long it stands. Undefined while there is no price. */
export function quote(input: SheetInput): Sheet | undefined {
  const { price } = input.plan;
  if (price === null) return undefined;
  const words = wordsOf(input.options);
  const title = words.quote.title();
  const frame = pageFrame(input, title);
  const { metrics } = input.options;
  const width = innerWidth(frame);
  const { shop, rates } = input.catalogue;
  const terms = shop.terms.trim();
  const blocks: Block[] = [
    heading(input, title, width),
    parties(input, width, words),
    space(4),
    ...openings(input, price, width, words),
    space(3),
    totals(price, rates.tax, width, words, input),
    ...offerBlocks(input, price, width, words),
    space(4),
    ...paragraph(
      words.quote.valid(
        rates.validDays,
        dateText(dayAfter(input.options.date, rates.validDays), input.options.language),
      ),
      width,
      metrics,
    ),
    ...(input.plan.openings.some(({ exit }) => exit)
      ? paragraph(
          words.quote.exits(input.plan.openings.filter(({ exit }) => exit).map(({ name }) => name)),
          width,
          metrics,
        )
      : []),
    ...left(input, price, width, words),
    ...unsettled(input, width, words),
    ...(terms === ''
      ? []
      : [
          space(3),
          rule(width),
          ...paragraph(words.quote.terms(), width, metrics, { capital: CAPITAL.small, face: 'bold' }),
          ...paragraph(terms, width, metrics, { capital: CAPITAL.small }),
        ]),
  ];
  return {
    ...{ path: 'quote', title: `${title}: ${input.job.name}`, symbols: {} },
    pages: paginate(blocks, frame),
    table: csv(input, price, words),
  };
}

/** The sheet's name, and the shop's sign at its right. */
function heading(input: SheetInput, title: string, width: number): Block {
  const { metrics } = input.options;
  const name = stack(paragraph(title, width * 0.6, metrics, { capital: CAPITAL.title, face: 'bold' }));
  const { logo } = input.catalogue.shop;
  const size = logo && imageSize(logo);
  if (logo === undefined || size === undefined) return name;
  const scale = Math.min(LOGO.width / size.width, LOGO.height / size.height);
  const [wide, high] = [size.width * scale, size.height * scale];
  const sign: Item = { ...{ kind: 'image', at: point(0, 0), width: wide, height: high }, ...logo };
  return beside([
    { at: 0, block: name },
    { at: width - wide, block: picture([sign], high) },
  ]);
}

/** Most the shop's sign takes, mm. */
const LOGO = { width: 55, height: 22 } as const;

/** One line an opening, then tax and total, for a spreadsheet. */
function csv(input: SheetInput, price: PricePlan, words: Words): Table {
  const { plan, catalogue } = input;
  const money = (value: number) => majorUnits(value, price.currency);
  const rows = price.byOpening.map((one) => {
    const opening = plan.openings.find(({ opening: id }) => id === one.opening);
    const cloth = opening && materialsNamed(opening.choices, catalogue).fabric?.name;
    const { width, height } = opening?.shape ?? {};
    return [
      ...[one.opening, opening?.name ?? '', opening?.place ?? ''],
      ...[width ? tenths(width.value) : '', height ? tenths(height.value) : ''],
      ...[cloth ?? '', money(one.price)],
    ];
  });
  const sum = (name: string, value: number) => ['', name.trim(), '', '', '', '', money(value)];
  return {
    header: words.quote.csv(price.currency.code),
    rows: [
      ...rows,
      sum(words.quote.subtotal(), price.price.value),
      sum(words.quote.tax(''), price.tax.value),
      sum(words.quote.total(), price.total.value),
      ...offerRows(input, price, words).map(({ name, total }) => sum(name, total)),
    ],
  };
}

/** Openings with a price that cannot be made as they stand. */
function unsettled(input: SheetInput, width: number, words: Words): readonly Block[] {
  const stopped = new Set(
    input.plan.findings.flatMap(({ severity, where }) => (severity === 'stop' ? [where.opening] : [])),
  );
  const names = input.plan.openings.filter(({ opening }) => stopped.has(opening)).map(({ name }) => name);
  return names.length === 0 ? [] : paragraph(words.quote.unsettled(names), width, input.options.metrics);
}

/** Openings that have no price, so that none is missed. */
function left(input: SheetInput, price: PricePlan, width: number, words: Words): readonly Block[] {
  const names = input.plan.openings
    .filter(({ opening }) => !price.byOpening.some((one) => one.opening === opening))
    .map(({ name }) => name);
  return names.length === 0 ? [] : paragraph(words.quote.without(names), width, input.options.metrics);
}

/** Who it is for on the left, who makes it on the right. */
function parties(input: SheetInput, width: number, words: Words): Block {
  const { metrics, language } = input.options;
  const date = dateText(input.options.date, language);
  const { customer, name, id } = input.job;
  const { shop } = input.catalogue;
  const each = (width - 8) / 2;
  const lines = (all: readonly string[], look: TextLook) =>
    all.filter((one) => one.trim() !== '').flatMap((one) => paragraph(one, each, metrics, look));
  const small = { capital: CAPITAL.small, colour: INK.soft };
  const left = stack([
    ...lines([words.quote.for()], small),
    ...lines([customer.name], { face: 'bold' }),
    ...lines([...addressLines(customer.address), customer.contact], { capital: CAPITAL.small }),
  ]);
  const right = stack([
    ...lines([words.quote.from()], small),
    ...lines([shop.name], { face: 'bold' }),
    ...lines([...addressLines(shop.address), shop.contact], { capital: CAPITAL.small }),
  ]);
  const job = stack([
    space(3),
    ...paragraph(words.quote.job(name, id, date), width, metrics, { capital: CAPITAL.small }),
  ]);
  return stack([
    beside([
      { at: 0, block: left },
      { at: each + 8, block: right },
    ]),
    job,
  ]);
}

/** An address line by line; a very long one run together. */
function addressLines(address: string): readonly string[] {
  const lines = address
    .split('\n')
    .map((one) => one.trim())
    .filter((one) => one !== '');
  return lines.length <= 6 ? lines : [lines.join(', ')];
}

function openings(input: SheetInput, price: PricePlan, width: number, words: Words): readonly Block[] {
  const { metrics } = input.options;
  const columns = [
    { title: '', width: width * 0.2 },
    { title: words.quote.opening(), width: width * 0.55 },
    { title: words.quote.price(), width: width * 0.25, align: 'end' as const },
  ];
  const rows = price.byOpening.map((one): readonly Cell[] => [
    thumbnail(input, one.opening, width * 0.2 - 6),
    description(input, one.opening, width * 0.55 - 3, words),
    cellText(moneyText(one.price, price.currency, input.options.language), width * 0.25, metrics, {}, 'end'),
  ]);
  return tableRows(columns, rows, metrics);
}

function thumbnail(input: SheetInput, name: string, width: number): Block {
  const { plan, catalogue, options } = input;
  const pattern = plan.patterns.find(({ members }) => members.some(({ opening }) => opening === name));
  const panel = plan.panels.find((one) => one.pattern === pattern?.pattern);
  const member = pattern?.members.find(({ opening }) => opening === name);
  if (!panel || !member) return space(0);
  const fabric = catalogue.fabrics.find(({ id }) => id === panel.choices.fabric);
  const opening = plan.openings.find((one) => one.opening === name)?.shape?.outline;
  const dense = 0.55 * (1 - (fabric?.openness ?? 0));
  const colour = fabric?.colour ?? INK.soft;
  const drawn = panelPicture(panel, undefined, options.metrics, {
    ...{ width, height: 24, place: member.place, fill: tint(colour, dense), ...(opening ? { opening } : {}) },
    pockets: {
      outlines:
        plan.hold
          .find((one) => one.pattern === panel.pattern)
          ?.points.flatMap(({ pocket }) => pocket ?? []) ?? [],
      fill: tint(colour, Math.min(1, dense * 1.35)),
    },
  });
  return picture(drawn.items, drawn.height);
}

function description(input: SheetInput, name: string, width: number, words: Words): Block {
  const { plan, options, catalogue } = input;
  const opening = plan.openings.find((one) => one.opening === name);
  if (opening === undefined) return stack(paragraph(name, width, options.metrics));
  const named = materialsNamed(opening.choices, catalogue);
  const small = { capital: CAPITAL.small, colour: INK.soft };
  const { metrics, units } = options;
  return stack([
    ...paragraph(opening.name, width, metrics, { face: 'bold' }),
    ...(opening.place === '' ? [] : paragraph(opening.place, width, metrics, small)),
    ...(opening.shape === null
      ? []
      : paragraph(
          words.quote.size(sizeText(opening.shape.width.value, opening.shape.height.value, units)),
          width,
          metrics,
          { capital: CAPITAL.small },
        )),
    ...paragraph(named.fabric?.name ?? opening.choices.fabric, width, metrics, { capital: CAPITAL.small }),
  ]);
}

function totals(price: PricePlan, tax: number, width: number, words: Words, input: SheetInput): Block {
  const { metrics } = input.options;
  const wide = width * 0.5;
  const line = (name: string, value: number, look: TextLook): Block =>
    beside([
      { at: 0, block: cellText(name, wide * 0.6, metrics, look) },
      {
        at: wide * 0.6,
        block: cellText(
          moneyText(value, price.currency, input.options.language),
          wide * 0.4,
          metrics,
          look,
          'end',
        ),
      },
    ]);
  const block = stack([
    line(words.quote.subtotal(), price.price.value, {}),
    line(words.quote.tax(percentText(tax, input.options.language)), price.tax.value, {}),
    rule(wide, 1.5),
    line(words.quote.total(), price.total.value, { face: 'bold', capital: CAPITAL.lead }),
  ]);
  return { ...block, draw: (x, top) => block.draw(point(x + width - wide, top).x, top) };
}

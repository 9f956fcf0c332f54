import type { Offer, PricedOffer, PricePlan } from '@panewright/design';
import { type Block, paragraph, space } from '../block.ts';
import { lengthText, moneyText } from '../figures.ts';
import { CAPITAL, INK } from '../ink.ts';
import type { SheetInput } from '../options.ts';
import { tableRows } from '../table.ts';
import type { Words } from '../words.ts';

/** What the customer may have otherwise: each with its own total, and by how much that is more or less. */
export function offerBlocks(
  input: SheetInput,
  price: PricePlan,
  width: number,
  words: Words,
): readonly Block[] {
  const { metrics, language } = input.options;
  const rows = offerRows(input, price, words);
  if (rows.length === 0) return [];
  const money = (value: number) => moneyText(value, price.currency, language);
  const columns = [
    { title: words.quote.options(), width: width * 0.56 },
    { title: words.quote.difference(), width: width * 0.22, align: 'end' as const },
    { title: words.quote.total(), width: width * 0.22, align: 'end' as const },
  ];
  const small = { capital: CAPITAL.small, colour: INK.soft };
  return [
    space(4),
    ...tableRows(
      columns,
      rows.map(({ name, total }) => {
        const more = total - price.total.value;
        return [name, `${more > 0 ? '+' : ''}${money(more)}`, money(total)];
      }),
      metrics,
      { capital: CAPITAL.small },
    ),
    space(1),
    ...paragraph(words.quote.optionsNote(), width, metrics, small),
  ];
}

/** Alternatives that have a price for every opening the quote has one for. */
export function offerRows(
  input: SheetInput,
  price: PricePlan,
  words: Words,
): readonly { readonly name: string; readonly total: number }[] {
  const stops = input.plan.findings.filter(({ severity }) => severity === 'stop').length;
  return (input.offers ?? []).flatMap((one: PricedOffer) => {
    if (one.price === null || one.price.byOpening.length < price.byOpening.length) return [];
    const name = offerName(one.offer, input, words);
    const said = one.stops > stops ? words.quote.optionUnsettled(name) : name;
    return [{ name: said, total: one.price.total.value }];
  });
}

/** What is otherwise, by the names the catalogue has for it. */
function offerName({ fabric, finish, hold }: Offer, input: SheetInput, words: Words): string {
  const { catalogue, options } = input;
  const named = (list: readonly { readonly id: string; readonly name: string }[] | undefined, id: string) =>
    list?.find((one) => one.id === id)?.name ?? id;
  const names = [
    ...(fabric === undefined ? [] : [named(catalogue.fabrics, fabric)]),
    ...(finish?.kind === 'binding' ? [named(catalogue.bindings, finish.binding)] : []),
    ...(finish?.kind === 'hem' ? [words.quote.optionHem(lengthText(finish.width, options.units))] : []),
    ...(finish?.kind === 'hotCut' ? [words.quote.optionHotCut()] : []),
    ...(hold?.by?.kind === 'fastener' ? [named(catalogue.fasteners, hold.by.fastener)] : []),
    ...(hold?.by?.kind === 'steel' ? [named(catalogue.steelStrips, hold.by.strip)] : []),
    ...(hold?.by?.kind !== 'fastener' && hold?.outside !== undefined
      ? [named(catalogue.magnets, hold.outside)]
      : []),
    ...(hold?.by?.kind === 'magnets' && hold.outside === undefined ? [words.quote.optionMagnets()] : []),
  ];
  return names.length > 0 ? words.quote.option(names) : words.quote.optionHold();
}

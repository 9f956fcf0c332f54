import type { Catalogue, Finding, TakeOffPlan } from '@panewright/design';
import type { SheetInput } from './options.ts';
import { catalogueName } from './words/catalogueNames.ts';
import type { Language } from './wordsOf.ts';

/**
 * What the sheets are made from, with the names of the catalogue to begin with in the sheets' language. Names a shop gave
 * are left as they are.
 */
export function inLanguage(input: SheetInput): SheetInput {
  const { language = 'en', say } = input.options;
  if (language === 'en') return input;
  const { takeOff } = input.plan;
  return {
    ...input,
    catalogue: catalogueIn(input.catalogue, language),
    plan: { ...input.plan, takeOff: takeOff && takeOffIn(takeOff, language) },
    options: { ...input.options, say: (finding, asked = language) => say(findingIn(finding, asked), asked) },
  };
}

const renamed = <T extends { readonly name: string }>(list: readonly T[], language: Language): T[] =>
  list.map((one) => ({
    ...one,
    name: catalogueName(one.name, language),
    ...('supplier' in one && typeof one.supplier === 'string'
      ? { supplier: catalogueName(one.supplier, language) }
      : {}),
  }));

function catalogueIn(catalogue: Catalogue, language: Language): Catalogue {
  const { shop, steelStrips, fasteners } = catalogue;
  return {
    ...catalogue,
    shop: {
      ...shop,
      name: catalogueName(shop.name, language),
      terms: catalogueName(shop.terms.trim(), language),
    },
    fabrics: renamed(catalogue.fabrics, language),
    bindings: renamed(catalogue.bindings, language),
    magnets: renamed(catalogue.magnets, language),
    wrapFilms: renamed(catalogue.wrapFilms, language),
    tapes: renamed(catalogue.tapes, language),
    threads: renamed(catalogue.threads, language),
    operations: renamed(catalogue.operations, language),
    ...(steelStrips ? { steelStrips: renamed(steelStrips, language) } : {}),
    ...(fasteners ? { fasteners: renamed(fasteners, language) } : {}),
  };
}

const takeOffIn = (takeOff: TakeOffPlan, language: Language): TakeOffPlan => ({
  ...takeOff,
  materials: renamed(takeOff.materials, language),
  labour: renamed(takeOff.labour, language),
});

/** A finding that names a material names it as the sheets do: texts among its numbers, each with its place in them. */
const findingIn = (finding: Finding, language: Language): Finding =>
  ({
    ...finding,
    numbers: Object.fromEntries(
      Object.entries(finding.numbers).map(([key, value]) => [
        key,
        typeof value === 'string' ? catalogueName(value, language) : value,
      ]),
    ),
  }) as Finding;

import type { ReadingName } from '@panewright/design';

type Name = string | number | undefined;

/** What a language calls the parts of an opening and the slips in reading them. */
export interface PartTerms {
  readonly readings: { readonly [R in ReadingName]: string };
  readonly corners: Readonly<Record<string, string>>;
  readonly tape: (from: string, to: string) => string;
  readonly side: (number: string) => string;
  readonly cornerNumber: (number: string) => string;
  readonly cornerBetween: (one: string, other: string) => string;
  readonly cornerAt: (place: string) => string;
  readonly causes: Readonly<Record<string, string>>;
}

export interface PartWords {
  /** A reading's, corner's or edge's name in words; a name not known stays as it is. */
  readonly sayPart: (name: Name) => string;
  /** Names set apart by spaces, in words. */
  readonly partsOf: (names: Name) => readonly string[];
  /** What a slip of that kind is called; '' where it is not explained. */
  readonly sayCause: (cause: Name) => string;
}

/** How names of parts are read, the same in every language; the terms are the language's own. */
export function partWords(terms: PartTerms): PartWords {
  const sayPart = (name: Name): string => {
    const text = String(name ?? '');
    if (text.startsWith('corner:')) return sayCorner(text.slice(7));
    if (text.startsWith('tape:')) {
      const [, from, to] = text.split(':');
      return terms.tape(`${from}`, `${to}`);
    }
    const numbered = /^side(\d+)$/.exec(text);
    if (numbered) return terms.side(numbered[1]!);
    if (Object.hasOwn(terms.readings, text)) return terms.readings[text as ReadingName];
    return terms.corners[text] ?? text;
  };
  /** A corner by its name or number, or by the two edges it lies between. */
  const sayCorner = (name: string): string => {
    if (/^\d+$/.test(name)) return terms.cornerNumber(name);
    const between = /^(\w+)-(\w+)$/.exec(name);
    return between
      ? terms.cornerBetween(sayPart(between[1]), sayPart(between[2]))
      : terms.cornerAt(sayPart(name));
  };
  return {
    sayPart,
    partsOf: (names) =>
      String(names ?? '')
        .split(' ')
        .filter(Boolean)
        .map(sayPart),
    sayCause: (cause) => terms.causes[String(cause)] ?? '',
  };
}

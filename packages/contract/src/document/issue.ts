import type { LengthRefusal } from '@panewright/quantity';

/** From the document's root: names of keys and positions in lists. */
export type IssuePath = readonly (string | number)[];

/** What one value may be, in JSON's words. */
export type JsonKind = 'null' | 'boolean' | 'number' | 'string' | 'array' | 'object' | 'nothing';

/** One thing wrong with a document or an input, where it is, and the numbers its sentence needs. */
export type Issue =
  | { readonly kind: 'missing'; readonly path: IssuePath }
  | { readonly kind: 'type'; readonly path: IssuePath; readonly wanted: string; readonly found: JsonKind }
  | { readonly kind: 'notFinite'; readonly path: IssuePath }
  | { readonly kind: 'notWhole'; readonly path: IssuePath }
  | { readonly kind: 'unknownKey'; readonly path: IssuePath; readonly key: string }
  | { readonly kind: 'forbiddenKey'; readonly path: IssuePath; readonly key: string }
  | {
      readonly kind: 'tooLow';
      readonly path: IssuePath;
      readonly least: number;
      readonly including: boolean;
      readonly found: number;
    }
  | {
      readonly kind: 'tooHigh';
      readonly path: IssuePath;
      readonly most: number;
      readonly including: boolean;
      readonly found: number;
    }
  | { readonly kind: 'textTooShort' | 'listTooShort'; readonly path: IssuePath; readonly least: number }
  | { readonly kind: 'textTooLong' | 'listTooLong'; readonly path: IssuePath; readonly most: number }
  | { readonly kind: 'notOneOf'; readonly path: IssuePath; readonly options: readonly string[] }
  | { readonly kind: 'pattern'; readonly path: IssuePath; readonly pattern: string }
  | { readonly kind: 'length'; readonly path: IssuePath; readonly refusal: LengthRefusal }
  | { readonly kind: 'rule'; readonly path: IssuePath; readonly rule: string }
  | { readonly kind: 'brokenText'; readonly path: IssuePath }
  | { readonly kind: 'tooDeep' | 'tooMany'; readonly path: IssuePath; readonly most: number };

/** `openings[2].survey.readings[0].entered` */
export function pathText(path: IssuePath): string {
  return path.reduce<string>((text, part) => {
    if (typeof part === 'number') return `${text}[${part}]`;
    const key = /^[A-Za-z_$][\w$-]*$/.test(part) ? part : JSON.stringify(part.slice(0, 40));
    return text === '' ? key : `${text}.${key}`;
  }, '');
}

export function jsonKind(value: unknown): JsonKind {
  if (value === null) return 'null';
  if (Array.isArray(value)) return 'array';
  const kind = typeof value;
  if (kind === 'boolean' || kind === 'number' || kind === 'string' || kind === 'object') return kind;
  return 'nothing';
}

/** The value a path leads to, or undefined. */
export function valueAt(root: unknown, path: IssuePath): unknown {
  let value = root;
  for (const part of path) {
    if (typeof value !== 'object' || value === null) return undefined;
    value = Object.hasOwn(value, part) ? (value as Record<string | number, unknown>)[part] : undefined;
  }
  return value;
}

import { entriesOf, type FieldPath, isPlain, sameValue } from './parts.ts';

/** One field that differs. A value that is not there is undefined. */
export interface FieldChange {
  readonly path: FieldPath;
  readonly before: unknown;
  readonly after: unknown;
}

/** One field that both sides changed, each to something else. */
export interface FieldConflict {
  readonly path: FieldPath;
  readonly base: unknown;
  readonly mine: unknown;
  readonly theirs: unknown;
}

export type Side = 'mine' | 'theirs';
/** What a person chose, by the path of the field as text. */
export type Picks = Readonly<Record<string, Side>>;

export interface Merged<T> {
  readonly document: T;
  /** What came from the other side alone, and is now in the document. */
  readonly taken: readonly FieldChange[];
  /** What nobody has picked yet; the document has this side's value there. */
  readonly conflicts: readonly FieldConflict[];
}

export const pathKey = (path: FieldPath): string => path.join(' › ');

/**
 * Brings two versions of a document together, field by field, against the one both were made from. A field changed on one
 * side is taken over; one changed on both, each otherwise, is a conflict until it is picked. Entries of lists that have an
 * id, a name or a side are followed wherever they stand; other lists are one field each.
 */
export function merge<T>(base: T, mine: T, theirs: T, picks: Picks = {}): Merged<T> {
  const taken: FieldChange[] = [];
  const conflicts: FieldConflict[] = [];
  const document = mergeAt([], base, mine, theirs, { picks, taken, conflicts }) as T;
  return { document, taken, conflicts };
}

/** Every field that differs between two documents, in the order of the second. */
export const changesBetween = <T>(before: T, after: T): readonly FieldChange[] =>
  merge(before, before, after).taken;

interface Notes {
  readonly picks: Picks;
  readonly taken: FieldChange[];
  readonly conflicts: FieldConflict[];
}

function mergeAt(path: FieldPath, base: unknown, mine: unknown, theirs: unknown, notes: Notes): unknown {
  if (sameValue(base, theirs) || sameValue(mine, theirs)) return mine;
  const inside = mergeInside(path, base, mine, theirs, notes);
  if (inside) return inside.value;
  if (sameValue(base, mine)) {
    notes.taken.push({ path, before: base, after: theirs });
    return theirs;
  }
  const picked = notes.picks[pathKey(path)];
  if (picked) return picked === 'mine' ? mine : theirs;
  notes.conflicts.push({ path, base, mine, theirs });
  return mine;
}

/** Objects and lists with keys are merged in their fields; undefined where the value is one field. */
function mergeInside(
  path: FieldPath,
  base: unknown,
  mine: unknown,
  theirs: unknown,
  notes: Notes,
): { readonly value: unknown } | undefined {
  if (isPlain(mine) && isPlain(theirs) && isPlain(base) && sameKind(base, mine, theirs)) {
    const value: Record<string, unknown> = {};
    for (const key of new Set([...Object.keys(mine), ...Object.keys(theirs)])) {
      const merged = mergeAt([...path, key], base[key], mine[key], theirs[key], notes);
      if (merged !== undefined) value[key] = merged;
    }
    return { value };
  }
  const lists = [base, mine, theirs].map(entriesOf);
  const [from, own, other] = lists;
  if (!from || !own || !other) return undefined;
  const value = orderOf(from, own, other).flatMap((key) => {
    const merged = mergeAt([...path, key], from.get(key), own.get(key), other.get(key), notes);
    return merged === undefined ? [] : [merged];
  });
  return { value };
}

/** Ways to measure, kinds of finish: objects of two kinds with different fields are chosen between whole. */
function sameKind(...objects: readonly Readonly<Record<string, unknown>>[]): boolean {
  const fieldsOf = (one: object) => Object.keys(one).toSorted().join();
  const alike = (name: string) => objects.every((one) => one[name] === objects[0]![name]);
  return (
    alike('method') && (alike('kind') || objects.every((one) => fieldsOf(one) === fieldsOf(objects[0]!)))
  );
}

/** This side's order, unless only the other one changed it; what the other added follows what it stood behind there. */
function orderOf(
  base: ReadonlyMap<string, unknown>,
  mine: ReadonlyMap<string, unknown>,
  theirs: ReadonlyMap<string, unknown>,
): readonly string[] {
  const common = (of: ReadonlyMap<string, unknown>) =>
    [...of.keys()].filter((key) => base.has(key) && mine.has(key) && theirs.has(key)).join('\n');
  const [lead, rest] = common(mine) === common(base) ? [theirs, mine] : [mine, theirs];
  const order = [...lead.keys()];
  let behind = -1;
  for (const key of rest.keys()) {
    const at = order.indexOf(key);
    if (at >= 0) behind = at;
    else order.splice(++behind, 0, key);
  }
  return order;
}

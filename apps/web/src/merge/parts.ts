/** From the document's root: names of fields, and for entries of a list the key each is known by. */
export type FieldPath = readonly string[];

type Plain = Readonly<Record<string, unknown>>;

export const isPlain = (value: unknown): value is Plain =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** Same content; the order of an object's keys does not matter. */
export function sameValue(a: unknown, b: unknown): boolean {
  if (Object.is(a, b)) return true;
  if (Array.isArray(a) || Array.isArray(b))
    return (
      Array.isArray(a) &&
      Array.isArray(b) &&
      a.length === b.length &&
      a.every((one, index) => sameValue(one, b[index]))
    );
  if (!isPlain(a) || !isPlain(b)) return false;
  const keys = Object.keys(a);
  return (
    keys.length === Object.keys(b).length &&
    keys.every((key) => Object.hasOwn(b, key) && sameValue(a[key], b[key]))
  );
}

/** What an entry of a list is known by: its id or name, the side it is a reading of, the ends of a tape. */
function keyOf(entry: unknown): string | null {
  if (!isPlain(entry)) return null;
  for (const name of ['id', 'of', 'name', 'opening'] as const)
    if (typeof entry[name] === 'string') return entry[name];
  return typeof entry.from === 'string' && typeof entry.to === 'string' ? `${entry.from}–${entry.to}` : null;
}

/**
 * A list as entries by key, in order; null where its entries have no keys and it can only be taken whole. The second
 * entry of one key (a side measured again) is known by its number too.
 */
export function entriesOf(list: unknown): ReadonlyMap<string, unknown> | null {
  if (!Array.isArray(list)) return null;
  const entries = new Map<string, unknown>();
  for (const entry of list) {
    const key = keyOf(entry);
    if (key === null) return null;
    let own = key;
    for (let n = 2; entries.has(own); n++) own = `${key} (${n})`;
    entries.set(own, entry);
  }
  return entries;
}

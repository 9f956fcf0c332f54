/** What was worked out for an entry that can no longer change, by the entry itself. */
function remembered(work: (entry: unknown) => string): (entry: unknown) => string {
  const known = new WeakMap<object, string>();
  return (entry) => {
    if (typeof entry !== 'object' || entry === null || !Object.isFrozen(entry)) return work(entry);
    const found = known.get(entry) ?? work(entry);
    known.set(entry, found);
    return found;
  };
}

/** A document's own fields, its lists entry by entry: an edit changes one opening of two hundred, and one is worded anew. */
function fieldsOf(
  document: object,
  whole: (value: unknown) => string,
  entry: (value: unknown) => string,
): (readonly [string, string])[] {
  return Object.entries(document)
    .filter(([, value]) => value !== undefined)
    .map(([name, value]) => [name, Array.isArray(value) ? `[${value.map(entry).join(',')}]` : whole(value)]);
}

const json = (value: unknown): string => JSON.stringify(value) ?? 'null';
const entryJson = remembered(json);

/** The document as JSON, as `JSON.stringify` would give it. */
export const documentText = (document: object): string =>
  `{${fieldsOf(document, json, entryJson)
    .map(([name, text]) => `${JSON.stringify(name)}:${text}`)
    .join(',')}}`;

/** The same content gives the same text, whatever the order of keys. */
const canonical = (value: unknown): string =>
  JSON.stringify(value, (_, one: unknown) =>
    typeof one === 'object' && one !== null && !Array.isArray(one)
      ? Object.fromEntries(Object.entries(one).toSorted(([a], [b]) => (a < b ? -1 : 1)))
      : one,
  ) ?? 'null';

/** A short text for a long one, to know it again by: two mixes of 32 bits each, and the length. */
function mixOf(text: string): string {
  let [a, b] = [0x811c9dc5, 0x9e3779b9];
  for (let i = 0; i < text.length; i++) {
    const code = text.charCodeAt(i);
    a = Math.imul(a ^ code, 0x01000193);
    b = Math.imul(b ^ code, 0x85ebca6b) ^ (b >>> 13);
  }
  return `${(a >>> 0).toString(36)}.${(b >>> 0).toString(36)}.${text.length.toString(36)}`;
}

const entryMix = remembered((entry) => mixOf(canonical(entry)));

/** Equal for documents of equal content, whatever the order of keys. */
export const fingerprint = (document: object): string =>
  mixOf(
    fieldsOf(document, canonical, entryMix)
      .toSorted(([a], [b]) => (a < b ? -1 : 1))
      .map(([name, text]) => `${name}:${text}`)
      .join('\n'),
  );

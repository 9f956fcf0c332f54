/** T with every typed array as a plain list, marked, so that JSON keeps it. */
export type Stored<T> = { readonly stored: unknown; readonly of?: T };

const MARK = 'f64';
const WHOLE = 'i32';

/** Plain data for JSON or a message; typed arrays become marked lists. */
export function packNumbers<T>(value: T): Stored<T> {
  return { stored: packed(value) };
}

/** The value `packNumbers` was given. */
export function unpackNumbers<T>({ stored }: Stored<T>): T {
  return unpacked(stored) as T;
}

function packed(value: unknown): unknown {
  if (value instanceof Float64Array) return { [MARK]: Array.from(value) };
  if (value instanceof Int32Array) return { [WHOLE]: Array.from(value) };
  if (Array.isArray(value)) return value.map(packed);
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([key, of]) => [key, packed(of)]));
}

function unpacked(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(unpacked);
  if (typeof value !== 'object' || value === null) return value;
  const entries = Object.entries(value);
  const [only] = entries;
  if (entries.length === 1 && only![0] === MARK) return Float64Array.from(only![1] as number[]);
  if (entries.length === 1 && only![0] === WHOLE) return Int32Array.from(only![1] as number[]);
  return Object.fromEntries(entries.map(([key, of]) => [key, unpacked(of)]));
}

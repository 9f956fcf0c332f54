/** Answers kept at once: enough for a slider to be drawn back over where it was. */
const KEPT = 256;

/**
 * Remembers the latest answers of a pure piece of work by a key that says all it depends on. The answer is the same as
 * without it.
 */
export function lately<I, V>(key: (input: I) => string, work: (input: I) => V): (input: I) => V {
  const known = new Map<string, V>();
  return (input) => {
    const name = key(input);
    const found = known.get(name);
    if (found !== undefined) return found;
    const value = work(input);
    if (known.size >= KEPT) known.delete(known.keys().next().value!);
    known.set(name, value);
    return value;
  };
}

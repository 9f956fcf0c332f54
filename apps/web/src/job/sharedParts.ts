/**
 * The next value with every part that did not change taken from the one before: equal parts stay the same object. What
 * is remembered by object, in a worker or in a drawing, then holds across a message.
 */
export function sharedParts<T>(before: unknown, next: T): T {
  if (Object.is(before, next)) return next;
  if (typeof before !== 'object' || typeof next !== 'object' || before === null || next === null) return next;
  if (Array.isArray(before) !== Array.isArray(next)) return next;
  const [old, fresh] = [before as Readonly<Record<string, unknown>>, next as Record<string, unknown>];
  const keys = Object.keys(fresh);
  let same = keys.length === Object.keys(old).length;
  const made: Record<string, unknown> = Array.isArray(next) ? ([] as never) : {};
  for (const key of keys) {
    made[key] = sharedParts(old[key], fresh[key]);
    same &&= Object.hasOwn(old, key) && Object.is(made[key], old[key]);
  }
  return (same ? before : made) as T;
}

/** A list for sending: what stands at the same place in the list before is sent as its place alone. */
export type Sent<T> = readonly (T | number)[];

export const toSend = <T extends object>(before: readonly T[], next: readonly T[]): Sent<T> =>
  next.map((one, index) => (before[index] === one ? index : one));

export const received = <T extends object>(before: readonly T[], sent: Sent<T>): readonly T[] =>
  sent.map((one) => (typeof one === 'number' ? before[one]! : one));

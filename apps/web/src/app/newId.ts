/** An id no other has: twelve random digits of base 36. */
export function newId(prefix: string): string {
  const bytes = crypto.getRandomValues(new Uint8Array(12));
  return `${prefix}-${Array.from(bytes, (byte) => (byte % 36).toString(36)).join('')}`;
}

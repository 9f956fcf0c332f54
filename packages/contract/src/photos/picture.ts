export interface Size {
  readonly width: number;
  readonly height: number;
}

export interface Picture extends Size {
  readonly mediaType: 'image/jpeg' | 'image/png' | 'image/webp';
  readonly bytes: Uint8Array;
}

/** A picture that was read, and the parts of its file that are kept of it, in their order. */
export interface Found extends Size {
  readonly mediaType: Picture['mediaType'];
  readonly parts: readonly Uint8Array[];
}

/** Two bytes as a number, the greater first. */
export const two = (bytes: Uint8Array, at: number): number => ((bytes[at] ?? 0) << 8) | (bytes[at + 1] ?? 0);

/** Whether these signs stand there. */
export const stands = (bytes: Uint8Array, at: number, signs: string): boolean =>
  [...signs].every((sign, k) => bytes[at + k] === sign.charCodeAt(0));

export function joined(parts: readonly Uint8Array[]): Uint8Array {
  const all = new Uint8Array(parts.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const part of parts) {
    all.set(part, at);
    at += part.length;
  }
  return all;
}

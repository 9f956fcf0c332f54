import { type Found, joined, type Size, stands } from './picture.ts';

/** Bits of the extended header that say: there is Exif, there is XMP. */
const SAYS = 0x08 | 0x04;

/** Chunks that the picture is shown by. Others may say anything, those of no standard too, and are left out. */
const SHOWN = ['VP8X', 'VP8 ', 'VP8L', 'ALPH', 'ICCP', 'ANIM', 'ANMF'];

/** Bytes as a number, the least first. */
const little = (bytes: Uint8Array, at: number, count: number): number => {
  let value = 0;
  for (let k = count - 1; k >= 0; k--) value = value * 256 + (bytes[at + k] ?? 0);
  return value;
};

/** Chunk by chunk, only those of the picture; the length in the head is written anew. */
export function readWebp(bytes: Uint8Array): Found | undefined {
  const whole = 8 + little(bytes, 4, 4);
  if (!stands(bytes, 0, 'RIFF') || !stands(bytes, 8, 'WEBP') || whole > bytes.length) return undefined;
  const chunks: Uint8Array[] = [];
  let size: Size | undefined;
  for (let at = 12; at + 8 <= whole; ) {
    const length = little(bytes, at + 4, 4);
    const next = at + 8 + length + (length % 2);
    if (at + 8 + length > whole) return undefined;
    size ??= sizeIn(bytes, at);
    if (SHOWN.some((name) => stands(bytes, at, name)))
      chunks.push(silent(bytes.slice(at, Math.min(next, whole))));
    at = next;
  }
  if (!size) return undefined;
  const body = joined(chunks);
  const length = 4 + body.length;
  const head = Uint8Array.from([0, 8, 16, 24].map((shift) => (length >>> shift) & 0xff));
  return {
    ...{ mediaType: 'image/webp', ...size },
    parts: [bytes.subarray(0, 4), head, bytes.subarray(8, 12), body],
  };
}

function silent(chunk: Uint8Array): Uint8Array {
  if (stands(chunk, 0, 'VP8X')) chunk[8] = chunk[8]! & ~SAYS;
  return chunk;
}

/** The picture's size in the chunk that begins it: extended, lossless or lossy. */
function sizeIn(bytes: Uint8Array, at: number): Size | undefined {
  if (stands(bytes, at, 'VP8X'))
    return { width: little(bytes, at + 12, 3) + 1, height: little(bytes, at + 15, 3) + 1 };
  if (stands(bytes, at, 'VP8L') && bytes[at + 8] === 0x2f) {
    const sides = little(bytes, at + 9, 4);
    return { width: (sides & 0x3fff) + 1, height: ((sides >>> 14) & 0x3fff) + 1 };
  }
  if (stands(bytes, at, 'VP8 ') && stands(bytes, at + 11, '\x9d\x01\x2a'))
    return { width: little(bytes, at + 14, 2) & 0x3fff, height: little(bytes, at + 16, 2) & 0x3fff };
  return undefined;
}

import type { Logo } from '@panewright/design';

export interface ImageSize {
  readonly width: number;
  readonly height: number;
}

/**
 * Size of a PNG or JPEG picture in its own dots, from the head of the file.
 *
 * @returns undefined where the bytes are no such picture
 * @source sources.md#png-header, sources.md#jpeg-frame-header
 */
export function imageSize({ mediaType, base64 }: Logo): ImageSize | undefined {
  const bytes = bytesOf(base64);
  const size = mediaType === 'image/png' ? pngSize(bytes) : jpegSize(bytes);
  return size !== undefined && size.width > 0 && size.height > 0 ? size : undefined;
}

const LETTERS = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/';
const VALUES = new Map([...LETTERS].map((letter, value) => [letter, value]));

function bytesOf(text: string): Uint8Array {
  const body = text.replace(/=+$/, '');
  const bytes = new Uint8Array(Math.floor((body.length * 3) / 4));
  let [held, bits, at] = [0, 0, 0];
  for (const letter of body) {
    held = ((held << 6) | (VALUES.get(letter) ?? 0)) & 0xffff;
    bits += 6;
    if (bits < 8) continue;
    bits -= 8;
    bytes[at++] = (held >> bits) & 0xff;
  }
  return bytes;
}

const two = (bytes: Uint8Array, at: number): number => ((bytes[at] ?? 0) << 8) | (bytes[at + 1] ?? 0);
const four = (bytes: Uint8Array, at: number): number => two(bytes, at) * 65536 + two(bytes, at + 2);

const PNG_SIGNATURE = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a];

/** The header is the first chunk after the signature. */
function pngSize(bytes: Uint8Array): ImageSize | undefined {
  if (PNG_SIGNATURE.some((one, index) => bytes[index] !== one)) return undefined;
  return { width: four(bytes, 16), height: four(bytes, 20) };
}

/** Segments one after another, to the one that begins a frame. */
function jpegSize(bytes: Uint8Array): ImageSize | undefined {
  if (two(bytes, 0) !== 0xffd8) return undefined;
  for (let at = 2; at + 9 < bytes.length; at += 2 + two(bytes, at + 2)) {
    const marker = bytes[at + 1]!;
    if (bytes[at] !== 0xff) return undefined;
    const frame = marker >= 0xc0 && marker <= 0xcf && ![0xc4, 0xc8, 0xcc].includes(marker);
    if (frame) return { width: two(bytes, at + 7), height: two(bytes, at + 5) };
  }
  return undefined;
}

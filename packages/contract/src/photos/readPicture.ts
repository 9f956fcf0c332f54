import { type Found, joined, type Picture, type Size, stands, two } from './picture.ts';
import { readPng } from './readPng.ts';
import { readWebp } from './readWebp.ts';

export type { Picture } from './picture.ts';

/**
 * A JPEG, PNG or WebP picture without what else its file says: place, camera, time and comments are left out; colours stay.
 *
 * @param orientation of a JPEG, 1..8 as Exif numbers them: kept, since the picture would lie on its side without it
 * @returns size as shown, in dots; undefined where the bytes are no such picture, or end before it does
 * @source sources.md#jpeg-segments, sources.md#png-chunks, sources.md#webp-container
 */
export function readPicture(bytes: Uint8Array, orientation = 1): Picture | undefined {
  const found = readJpeg(bytes, orientation) ?? readPng(bytes) ?? readWebp(bytes);
  if (!found || found.width === 0 || found.height === 0) return undefined;
  const { mediaType, parts } = found;
  return { mediaType, ...turnedSize(found, orientation), bytes: joined(parts) };
}

/** Orientations 5 to 8 show the picture on its side. */
const turnedSize = ({ mediaType, width, height }: Found, orientation: number): Size =>
  mediaType === 'image/jpeg' && orientation > 4 ? { width: height, height: width } : { width, height };

/** What of a JPEG's own application segments is needed to show it: nothing else of them is kept. */
const NEEDED: ReadonlyMap<number, string> = new Map([
  [0xe0, 'JFIF'],
  [0xe2, 'ICC_PROFILE'],
  [0xee, 'Adobe'],
]);
const [START, END, SCAN, COMMENT] = [0xd8, 0xd9, 0xda, 0xfe];

function readJpeg(bytes: Uint8Array, orientation: number): Found | undefined {
  if (two(bytes, 0) !== 0xff00 + START) return undefined;
  const parts = [bytes.subarray(0, 2), ...(orientation > 1 ? [orientationSegment(orientation)] : [])];
  let size: Size | undefined;
  for (let at = 2; at + 2 <= bytes.length && bytes[at] === 0xff; ) {
    const marker = bytes[at + 1]!;
    if (marker === END)
      return size && { ...size, mediaType: 'image/jpeg', parts: [...parts, bytes.subarray(at, at + 2)] };
    // A marker may stand behind any number of fill bytes.
    const end = marker === 0xff ? at + 1 : at + 2 + Math.max(2, two(bytes, at + 2));
    if (isFrame(marker)) size = { width: two(bytes, at + 7), height: two(bytes, at + 5) };
    const next = marker === SCAN ? endOfScan(bytes, end) : end;
    if (marker !== 0xff && isNeeded(bytes, at)) parts.push(bytes.subarray(at, next));
    at = next;
  }
  return undefined;
}

const isFrame = (marker: number): boolean =>
  marker >= 0xc0 && marker <= 0xcf && ![0xc4, 0xc8, 0xcc].includes(marker);

function isNeeded(bytes: Uint8Array, at: number): boolean {
  const marker = bytes[at + 1]!;
  if (marker === COMMENT) return false;
  if (marker < 0xe0 || marker > 0xef) return true;
  const name = NEEDED.get(marker);
  return name !== undefined && stands(bytes, at + 4, name);
}

/** Where the marker after a scan's data stands: in the data, 0xff is followed by 0 or by a restart. */
function endOfScan(bytes: Uint8Array, from: number): number {
  for (let at = from; at + 1 < bytes.length; at++) {
    const after = bytes[at + 1]!;
    if (bytes[at] === 0xff && after !== 0 && after !== 0xff && (after < 0xd0 || after > 0xd7)) return at;
  }
  return bytes.length;
}

/** An Exif segment that says how the picture is to be turned, and nothing more. */
const orientationSegment = (orientation: number): Uint8Array =>
  Uint8Array.from([
    ...[0xff, 0xe1, 0, 34, 0x45, 0x78, 0x69, 0x66, 0, 0],
    ...[0x4d, 0x4d, 0, 42, 0, 0, 0, 8],
    ...[0, 1, 0x01, 0x12, 0, 3, 0, 0, 0, 1, 0, orientation, 0, 0],
    ...[0, 0, 0, 0],
  ]);

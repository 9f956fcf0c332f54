/** What a photo file says of itself. Absent when it does not say. */
export interface Exif {
  /** Focal length a 36 x 24 mm frame would need for the same view, mm. */
  readonly focalLength35?: number;
  /** 1..8 as the standard numbers them; 1 is upright. */
  readonly orientation?: number;
}

const ORIENTATION = 0x0112;
const EXIF_POINTER = 0x8769;
const FOCAL_LENGTH_35 = 0xa405;

/**
 * Reads orientation and 35 mm equivalent focal length from the bytes of a JPEG file.
 * A file without an Exif segment, or with a damaged one, says nothing: {}.
 *
 * @source sources.md#exif-232
 */
export function readExif(bytes: Uint8Array): Exif {
  const start = exifStart(bytes);
  if (start === undefined) return {};
  const view = new DataView(bytes.buffer, bytes.byteOffset + start, bytes.byteLength - start);
  if (view.byteLength < 14) return {};
  const little = view.getUint16(0) === 0x4949;
  const found = new Map<number, number>();
  readDirectory(view, view.getUint32(4, little), little, found);
  const pointer = found.get(EXIF_POINTER);
  if (pointer !== undefined) readDirectory(view, pointer, little, found);
  const focal = found.get(FOCAL_LENGTH_35);
  const orientation = found.get(ORIENTATION);
  return {
    ...(focal ? { focalLength35: focal } : {}),
    ...(orientation && orientation <= 8 ? { orientation } : {}),
  };
}

/** Offset of the TIFF header inside the APP1 segment. */
function exifStart(bytes: Uint8Array): number | undefined {
  if (bytes[0] !== 0xff || bytes[1] !== 0xd8) return undefined;
  let at = 2;
  while (at + 10 < bytes.length && bytes[at] === 0xff) {
    const marker = bytes[at + 1]!;
    if (marker === 0xda) return undefined;
    const length = (bytes[at + 2]! << 8) | bytes[at + 3]!;
    const isExif = marker === 0xe1 && String.fromCharCode(...bytes.subarray(at + 4, at + 8)) === 'Exif';
    if (isExif) return at + 10;
    at += 2 + length;
  }
  return undefined;
}

/** Keeps the first number of every SHORT and LONG entry. */
function readDirectory(view: DataView, offset: number, little: boolean, into: Map<number, number>): void {
  if (offset + 2 > view.byteLength) return;
  const count = view.getUint16(offset, little);
  for (let k = 0; k < count; k++) {
    const at = offset + 2 + 12 * k;
    if (at + 12 > view.byteLength) return;
    const type = view.getUint16(at + 2, little);
    if (type === 3) into.set(view.getUint16(at, little), view.getUint16(at + 8, little));
    if (type === 4) into.set(view.getUint16(at, little), view.getUint32(at + 8, little));
  }
}

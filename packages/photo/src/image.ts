/**
 * A picture as a browser's canvas or a decoder gives it. Row by row from the top left;
 * 1 channel (grey), 3 (RGB) or 4 (RGBA) bytes a pixel, told by the length of `data`.
 */
export interface Photo {
  readonly width: number;
  readonly height: number;
  readonly data: ArrayLike<number>;
}

/** One channel, 0..255. Pixel coordinates: the centre of the top-left pixel is (0, 0), y down. */
export interface GreyImage {
  readonly width: number;
  readonly height: number;
  readonly data: Uint8Array;
}

/**
 * Luma of a picture, 0..255.
 *
 * @throws when the data's length fits neither 1, 3 nor 4 bytes a pixel: a fault of the caller
 * @source sources.md#itu-bt601 (luma weights)
 */
export function toGrey({ width, height, data }: Photo): GreyImage {
  const pixels = width * height;
  const channels = data.length / pixels;
  if (channels === 1 && data instanceof Uint8Array) return { width, height, data };
  if (channels !== 1 && channels !== 3 && channels !== 4) {
    throw new RangeError(`${data.length} bytes do not make ${width} x ${height} pixels`);
  }
  const grey = new Uint8Array(pixels);
  if (channels === 1) grey.set(data);
  else {
    for (let i = 0, j = 0; i < pixels; i++, j += channels) {
      grey[i] = (77 * data[j]! + 150 * data[j + 1]! + 29 * data[j + 2]! + 128) >> 8;
    }
  }
  return { width, height, data: grey };
}

/** Every 2 x 2 block averaged to one pixel. A point p of the full picture lies at (p - 0.5) / 2. */
export function halve(image: GreyImage): GreyImage {
  const width = image.width >> 1;
  const height = image.height >> 1;
  const data = new Uint8Array(width * height);
  for (let y = 0; y < height; y++) {
    let i = 2 * y * image.width;
    for (let x = 0; x < width; x++, i += 2) {
      const below = i + image.width;
      const sum = image.data[i]! + image.data[i + 1]! + image.data[below]! + image.data[below + 1]!;
      data[y * width + x] = (sum + 2) >> 2;
    }
  }
  return { width, height, data };
}

/**
 * Bilinear sample.
 *
 * @returns 0..255, or NaN when the four neighbours are not all inside: the caller tests for it
 * @source definition of bilinear interpolation
 */
export function sampleAt({ width, height, data }: GreyImage, x: number, y: number): number {
  if (!(x >= 0 && y >= 0 && x < width - 1 && y < height - 1)) return Number.NaN;
  const left = Math.floor(x);
  const top = Math.floor(y);
  const u = x - left;
  const v = y - top;
  const i = top * width + left;
  const upper = data[i]! + u * (data[i + 1]! - data[i]!);
  const lower = data[i + width]! + u * (data[i + width + 1]! - data[i + width]!);
  return upper + v * (lower - upper);
}

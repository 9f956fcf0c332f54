import { readExif } from '@panewright/photo';
import { expect, test } from 'vitest';

/** A JPEG header with one Exif directory holding the given SHORT entries. Layout: Exif 2.32, section 4.5 and 4.6. */
function header(
  little: boolean,
  entries: readonly (readonly [number, number])[],
  deep: readonly (readonly [number, number])[],
) {
  const bytes = new Uint8Array(300);
  const view = new DataView(bytes.buffer);
  view.setUint16(0, 0xffd8);
  view.setUint16(2, 0xffe1);
  view.setUint16(4, 290);
  bytes.set([0x45, 0x78, 0x69, 0x66, 0, 0], 6);
  const tiff = 12;
  view.setUint16(tiff, little ? 0x4949 : 0x4d4d);
  view.setUint16(tiff + 2, 42, little);
  view.setUint32(tiff + 4, 8, little);
  const write = (at: number, list: readonly (readonly [number, number, number])[]) => {
    view.setUint16(at, list.length, little);
    list.forEach(([tag, type, value], k) => {
      view.setUint16(at + 2 + 12 * k, tag, little);
      view.setUint16(at + 4 + 12 * k, type, little);
      view.setUint32(at + 6 + 12 * k, 1, little);
      if (type === 3) view.setUint16(at + 10 + 12 * k, value, little);
      else view.setUint32(at + 10 + 12 * k, value, little);
    });
  };
  write(tiff + 8, [...entries.map(([tag, value]) => [tag, 3, value] as const), [0x8769, 4, 120]]);
  write(
    tiff + 120,
    deep.map(([tag, value]) => [tag, 3, value] as const),
  );
  return bytes;
}

test.each([true, false])(
  'focal length and orientation are read in either byte order (little-endian: %s)',
  (little) => {
    const bytes = header(little, [[0x0112, 6]], [[0xa405, 26]]);
    expect(readExif(bytes)).toEqual({ focalLength35: 26, orientation: 6 });
  },
);

test('a file that says nothing, and one cut short, say nothing', () => {
  expect(readExif(Uint8Array.of(0xff, 0xd8, 0xff, 0xdb, 0, 4, 0, 0))).toEqual({});
  expect(readExif(header(true, [[0x0112, 6]], []).subarray(0, 24))).toEqual({});
  expect(readExif(new Uint8Array(0))).toEqual({});
});

test('a focal length of 0, which the standard gives the meaning "unknown", is not a focal length', () => {
  expect(readExif(header(true, [], [[0xa405, 0]]))).toEqual({});
});

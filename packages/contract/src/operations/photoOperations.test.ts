import {
  base64,
  bytesOfBase64,
  type Catalogue,
  callOperation,
  defaultCatalogue,
  memoryStore,
  type Ports,
} from '@panewright/contract';
import { decodeJpeg, readExif } from '@panewright/photo';
import { expect, test } from 'vitest';

// A gradient of 12 × 8 dots, written by ImageMagick 6.9 with libjpeg, libpng and libwebp 1.2.4: `convert -size 12x8 gradient:red-blue`.
const JPEG = bytesOfBase64(
  '/9j/4AAQSkZJRgABAQAAAQABAAD/2wBDAA0JCgsKCA0LCgsODg0PEyAVExISEyccHhcgLikxMC4pLSwzOko+MzZGNywtQFdBRkxOUlNSMj5aYVpQYEpRUk//2wBDAQ4ODhMREyYVFSZPNS01T09PT09PT09PT09PT09PT09PT09PT09PT09PT09PT09PT09PT09PT09PT09PT09PT0//wAARCAAIAAwDASIAAhEBAxEB/8QAFQABAQAAAAAAAAAAAAAAAAAAAAb/xAAWEAEBAQAAAAAAAAAAAAAAAAAAFGH/xAAVAQEBAAAAAAAAAAAAAAAAAAAEBv/EABcRAAMBAAAAAAAAAAAAAAAAAAAEFVL/2gAMAwEAAhEDEQA/AJGzSzQVsZTIys1o/9k=',
)!;
const PNG = bytesOfBase64(
  'iVBORw0KGgoAAAANSUhEUgAAAAwAAAAIEAIAAAASFlXlAAAARElEQVQoz63SAQ0AIBBC0e9mlDOMYc4w2sUy2EVDCAHeYKPciyVFCTEN0Bb0+IfqGZ5GVQltGab1gC0DFBOUBgjAcYEHWHcQAxCS7c8AAAAASUVORK5CYII=',
)!;
const WEBP = bytesOfBase64(
  'UklGRkIAAABXRUJQVlA4IDYAAAAwAgCdASoMAAgAA4BaJagCdGuA/gAFue1vMAD+6Q8cZTb+mRh8KDv//IM/VS/3Zp+37wQAAAA=',
)!;
const LOSSLESS = bytesOfBase64(
  'UklGRkgAAABXRUJQVlA4TDsAAAAvC8ABAD8AEIT/bRMCgRQO0wKBxJ/xXJ5/gkmaajtGB+cDDEKSkkIKKaSQQgop5D+zEBH9z+dYhqZIAgA=',
)!;

const signs = (text: string) => [...text].map((sign) => sign.charCodeAt(0));
const SECRET = 'INVENTED PLACE';
/** Exif 2.32, 4.6: big-endian, orientation 6 and a maker's name. */
const EXIF = [
  ...[0x4d, 0x4d, 0, 42, 0, 0, 0, 8, 0, 2],
  ...[0x01, 0x0f, 0, 2, 0, 0, 0, SECRET.length, 0, 0, 0, 38],
  ...[0x01, 0x12, 0, 3, 0, 0, 0, 1, 0, 6, 0, 0],
  ...[0, 0, 0, 0, ...signs(SECRET)],
];
const segment = (marker: number, body: readonly number[]) => [0xff, marker, 0, 2 + body.length, ...body];
const said = Uint8Array.from([
  ...JPEG.subarray(0, 2),
  ...segment(0xe1, [...signs('Exif'), 0, 0, ...EXIF]),
  ...segment(0xfe, signs(SECRET)),
  ...segment(0xe2, [...signs('MPF'), 0, ...signs(SECRET)]),
  ...JPEG.subarray(2),
  ...signs(SECRET),
]);
const four = (value: number) => [0, 8, 16, 24].map((shift) => (value >>> shift) & 0xff);
const chunk = (name: string, body: readonly number[]) => [
  ...signs(name),
  ...four(body.length),
  ...body,
  ...(body.length % 2 ? [0] : []),
];
const inRiff = (body: readonly number[]) =>
  Uint8Array.from([...signs('RIFF'), ...four(4 + body.length), ...signs('WEBP'), ...body]);
/** RFC 9649, 2.7: the extended form, its flags for Exif and XMP, canvas less one. */
const extended = (flags: number) => chunk('VP8X', [flags, 0, 0, 0, 11, 0, 0, 7, 0, 0]);

const shopWith = (photo?: { readonly id: string; readonly width: number; readonly height: number }) =>
  ({
    ...defaultCatalogue,
    offcuts: [
      {
        ...{ id: 'rest', name: 'Rest', fabric: 'mesh-black', along: 820, across: 610, place: '', worth: 1 },
        ...{ notes: '', from: { job: 'van', jobName: 'Van', lay: 'L1', date: '2026-11-20' } },
        ...(photo ? { photo } : {}),
      },
    ],
  }) satisfies Catalogue;

const keep = (bytes: Uint8Array, ports: Ports = memoryStore(() => ''), id = 'p') =>
  callOperation('keepPhoto', { id, base64: base64(bytes) }, ports);

/** Kept, named by an offcut, and opened again. */
async function keptOf(bytes: Uint8Array) {
  const ports = memoryStore(() => '');
  const kept = await keep(bytes, ports);
  if (!kept.ok) throw new Error(kept.refusal.code);
  const { width, height } = kept.value as { readonly width: number; readonly height: number };
  await callOperation(
    'saveCatalogue',
    { catalogue: shopWith({ id: 'p', width, height }), basedOn: 0 },
    ports,
  );
  const opened = await callOperation('openPhoto', { id: 'p' }, ports);
  if (!opened.ok) throw new Error(opened.refusal.code);
  const { base64: text, ...rest } = opened.value as { readonly base64: string };
  return { ...rest, bytes: bytesOfBase64(text)! };
}

test.each([
  ['image/jpeg', JPEG],
  ['image/png', PNG],
  ['image/webp', WEBP],
  ['image/webp', LOSSLESS],
])('a plain %s of 12 × 8 dots is kept byte by byte', async (mediaType, bytes) => {
  expect(await keptOf(bytes)).toEqual({ id: 'p', mediaType, width: 12, height: 8, bytes });
});

// Oracle: jpeg-js decodes the same dots before and after; its Exif then holds the orientation alone.
test('of a JPEG only the picture is kept and which way up it is: no place, maker, comment or what trails it', async () => {
  const { bytes, ...rest } = await keptOf(said);
  expect(rest).toMatchObject({ mediaType: 'image/jpeg', width: 8, height: 12 });
  expect(String.fromCharCode(...bytes)).not.toContain('INVENTED');
  expect(bytes).toHaveLength(JPEG.length + 36);
  expect(readExif(bytes)).toEqual({ orientation: 6 });
  expect(decodeJpeg(bytes)).toEqual(decodeJpeg(said));
});

test('a PNG loses its text, a WebP its Exif and XMP, both what no standard names, and stay pictures', async () => {
  for (const name of ['tEXt', 'eXIf', 'teSt']) {
    const text = [0, 0, 0, SECRET.length, ...signs(name), ...signs(SECRET), 1, 2, 3, 4];
    const png = Uint8Array.from([...PNG.subarray(0, 33), ...text, ...PNG.subarray(33)]);
    expect((await keptOf(png)).bytes).toEqual(PNG);
  }
  const picture = [...WEBP.subarray(12)];
  const other = [...chunk('XMP ', signs('x')), ...chunk('TEST', signs(SECRET))];
  const webp = inRiff([...extended(0x2c), ...picture, ...chunk('EXIF', EXIF), ...other]);
  expect(await keptOf(webp)).toMatchObject({
    ...{ width: 12, height: 8 },
    bytes: inRiff([...extended(0x20), ...picture]),
  });
});

test('what is no picture, is cut short, too large or too wide is refused', async () => {
  const refused = async (bytes: Uint8Array) => {
    const kept = await keep(bytes);
    return kept.ok ? 'kept' : kept.refusal;
  };
  const none = { code: 'PHOTO_NO_PICTURE', id: 'p' };
  expect(await refused(Uint8Array.from(signs('<svg xmlns="http://www.w3.org/2000/svg"/>')))).toEqual(none);
  for (const bytes of [JPEG, PNG, WEBP, LOSSLESS])
    for (const length of [0, 1, 13, Math.floor(bytes.length / 2), bytes.length - 1])
      expect(await refused(bytes.subarray(0, length)), `${length}`).toEqual(none);
  const wide = JPEG.slice();
  const frame = wide.findIndex((byte, at) => byte === 0xff && wide[at + 1] === 0xc0);
  wide.set([0x13, 0x88], frame + 7);
  expect(await refused(wide)).toEqual({ code: 'PHOTO_TOO_WIDE', width: 5000, height: 8, most: 4096 });
  const heavy = [...PNG.subarray(0, 33), 0, 0x1e, 0x84, 0x80, ...signs('IDAT')];
  const large = new Uint8Array(PNG.length + 2_000_012);
  large.set(heavy);
  large.set(PNG.subarray(33), 33 + 2_000_012);
  expect(await refused(large)).toEqual({ code: 'PHOTO_TOO_LARGE', size: large.length, most: 2_000_000 });
});

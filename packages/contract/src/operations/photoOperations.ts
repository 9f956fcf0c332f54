import { id } from '@panewright/design';
import { ok, type Result, refuse } from '@panewright/quantity';
import { z } from 'zod';
import { base64, bytesOfBase64 } from '../base64.ts';
import { type Picture, readPicture } from '../photos/readPicture.ts';
import type { KeepPhotoRefusal } from '../refusal.ts';
import { storeOperation } from './operation.ts';

/** Bytes of a photo that is kept; 1600 dots on the longer side take about a quarter of it. */
const MOST_BYTES = 2_000_000;
const MOST_SIDE = 4096;

const dots = z.int().describe('as shown, in dots');
const photo = {
  id: z.string(),
  mediaType: z.enum(['image/jpeg', 'image/png', 'image/webp']),
  width: dots,
  height: dots,
};

/** One grey dot. */
const EXAMPLE =
  'iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAAAAAA6fptVAAAACklEQVR4nGNoAAAAggCBd81ytgAAAABJRU5ErkJggg==';

export const keepPhoto = storeOperation({
  summary:
    'Keeps a photo without what else its file says (place, camera, time); gone in a day unless an offcut of the catalogue names it.',
  input: z.strictObject({
    id,
    base64: z.string().max(9_000_000).describe('the bytes of a JPEG, PNG or WebP picture: 2 MB at most'),
  }),
  output: z.strictObject({ ...photo, size: z.int().describe('bytes that are kept') }),
  example: { id: 'photo1', base64: EXAMPLE },
  run: async (asked, { photos }) => {
    const bytes = bytesOfBase64(asked.base64);
    if (!bytes) return refuse({ code: 'BYTES_NOT_BASE64', name: asked.id });
    const picture = await pictureOf(asked.id, bytes);
    if (!picture.ok) return picture;
    const kept = await photos.keep({ id: asked.id, ...picture.value });
    if (!kept.ok) return kept;
    const { id: of, mediaType, width, height, bytes: all } = kept.value;
    return ok({ id: of, mediaType, width, height, size: all.length });
  },
});

async function pictureOf(of: string, bytes: Uint8Array): Promise<Result<Picture, KeepPhotoRefusal>> {
  const { readExif } = await import('@panewright/photo');
  const picture = readPicture(bytes, readExif(bytes).orientation);
  if (!picture) return refuse({ code: 'PHOTO_NO_PICTURE', id: of });
  const { width, height, bytes: all } = picture;
  if (all.length > MOST_BYTES) return refuse({ code: 'PHOTO_TOO_LARGE', size: all.length, most: MOST_BYTES });
  if (Math.max(width, height) > MOST_SIDE)
    return refuse({ code: 'PHOTO_TOO_WIDE', width, height, most: MOST_SIDE });
  return ok(picture);
}

export const openPhoto = storeOperation({
  summary: 'A photo that an offcut of the catalogue names.',
  input: z.strictObject({ id }),
  output: z.strictObject({ ...photo, base64: z.string() }),
  example: { id: 'photo1' },
  run: async ({ id: of }, { photos }) => {
    const found = await photos.open(of);
    if (!found.ok) return found;
    const { bytes, ...rest } = found.value;
    return ok({ ...rest, base64: base64(bytes) });
  },
});

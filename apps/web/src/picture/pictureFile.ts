import type { SeenPart } from '../contract.ts';
import { saveFile } from '../sheets/saveFile.ts';
import type { Photo } from './PhotoPicture.tsx';

export const pathOf = (rings: SeenPart['rings']): string =>
  rings.map((ring) => `M${ring.map(({ x, y }) => `${x.toFixed(1)} ${y.toFixed(1)}`).join('L')}Z`).join('');

/** A line's width and dashes on a photo so many dots wide. */
export const lineOf = (width: number) => ({ weight: width / 700, dashes: [width / 120, width / 170] });

/** The photo with the panel in it, in the photo's own dots, as a JPEG. */
export async function savePicture(photo: Photo, parts: readonly SeenPart[], name: string): Promise<void> {
  const image = new Image();
  image.src = photo.url;
  await image.decode();
  const canvas = document.createElement('canvas');
  canvas.width = photo.width;
  canvas.height = photo.height;
  const pen = canvas.getContext('2d')!;
  pen.drawImage(image, 0, 0);
  const { weight, dashes } = lineOf(photo.width);
  for (const { rings, fill, line } of parts) {
    const path = new Path2D(pathOf(rings));
    if (fill) {
      pen.globalAlpha = fill.share;
      pen.fillStyle = fill.colour;
      pen.fill(path, 'evenodd');
      pen.globalAlpha = 1;
    }
    if (line) {
      pen.strokeStyle = line.colour;
      pen.lineWidth = weight;
      pen.setLineDash(line.dashed ? dashes : []);
      pen.stroke(path);
    }
  }
  const blob = await new Promise<Blob | null>((done) => canvas.toBlob(done, 'image/jpeg', 0.92));
  if (!blob) throw new Error('the picture could not be written');
  saveFile({ path: name, mediaType: 'image/jpeg', bytes: new Uint8Array(await blob.arrayBuffer()) });
}

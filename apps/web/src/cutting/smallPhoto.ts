/** Dots on the longer side of a photo that is kept. */
const SIDE = 1600;

/**
 * A photo drawn anew as a JPEG, upright and no larger than is kept: what else its file said is not in it.
 *
 * @returns null where the browser cannot read it
 */
export async function smallPhoto(file: Blob): Promise<Blob | null> {
  let image: ImageBitmap;
  try {
    image = await createImageBitmap(file);
  } catch {
    return null;
  }
  const scale = Math.min(1, SIDE / Math.max(image.width, image.height));
  const canvas = document.createElement('canvas');
  canvas.width = Math.max(1, Math.round(image.width * scale));
  canvas.height = Math.max(1, Math.round(image.height * scale));
  const pen = canvas.getContext('2d')!;
  // A JPEG has no see-through parts: they would turn black.
  pen.fillStyle = 'white';
  pen.fillRect(0, 0, canvas.width, canvas.height);
  pen.imageSmoothingQuality = 'high';
  pen.drawImage(image, 0, 0, canvas.width, canvas.height);
  image.close();
  return new Promise((done) => canvas.toBlob(done, 'image/jpeg', 0.85));
}

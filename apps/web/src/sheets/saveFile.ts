import type { SheetFile } from '../server/server.ts';

/** A file of bytes or, as the server sends it, of base64 text. */
export type AnyFile =
  | Pick<SheetFile, 'path' | 'mediaType' | 'base64'>
  | { readonly path: string; readonly mediaType: string; readonly bytes: Uint8Array<ArrayBuffer> };

export const bytesOf = (file: AnyFile): Uint8Array<ArrayBuffer> =>
  'bytes' in file ? file.bytes : Uint8Array.from(atob(file.base64), (sign) => sign.charCodeAt(0));

/** An address the browser can open; it is given back after the browser has had time to load from it. */
export function fileUrl(file: AnyFile): string {
  const url = URL.createObjectURL(new Blob([bytesOf(file)], { type: file.mediaType }));
  setTimeout(() => URL.revokeObjectURL(url), 60_000);
  return url;
}

/** Hands the file to the browser's downloads, under the last part of its path. */
export function saveFile(file: AnyFile): void {
  const link = document.createElement('a');
  link.href = fileUrl(file);
  link.download = file.path.split('/').at(-1)!;
  document.body.append(link);
  link.click();
  link.remove();
}

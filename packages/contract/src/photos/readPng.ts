import { type Found, stands, two } from './picture.ts';

const SIGNATURE = '\x89PNG\r\n\x1a\n';
/** Chunks that the picture is shown by. Others may say anything, those of no standard too, and are left out. */
const SHOWN = [
  ...['IHDR', 'PLTE', 'IDAT', 'IEND', 'tRNS', 'bKGD', 'pHYs'],
  ...['cHRM', 'gAMA', 'iCCP', 'sBIT', 'sRGB', 'cICP', 'mDCV', 'cLLI'],
];

const four = (bytes: Uint8Array, at: number): number => two(bytes, at) * 65536 + two(bytes, at + 2);

/** Chunk by chunk, from the header to the end chunk; what follows that is left out. */
export function readPng(bytes: Uint8Array): Found | undefined {
  if (!stands(bytes, 0, SIGNATURE) || !stands(bytes, 12, 'IHDR')) return undefined;
  const parts = [bytes.subarray(0, 8)];
  for (let at = 8; at + 12 <= bytes.length; ) {
    const next = at + 12 + four(bytes, at);
    if (next > bytes.length) return undefined;
    if (SHOWN.some((name) => stands(bytes, at + 4, name))) parts.push(bytes.subarray(at, next));
    if (stands(bytes, at + 4, 'IEND'))
      return { mediaType: 'image/png', width: four(bytes, 16), height: four(bytes, 20), parts };
    at = next;
  }
  return undefined;
}

import { type AnyFile, bytesOf } from './saveFile.ts';

const CRC_TABLE = Uint32Array.from({ length: 256 }, (_, n) => {
  let value = n;
  for (let bit = 0; bit < 8; bit++) value = value & 1 ? 0xedb88320 ^ (value >>> 1) : value >>> 1;
  return value;
});

/** CRC-32 as ZIP has it. @source sources.md#pkware-appnote */
export function crc32(bytes: Uint8Array): number {
  let crc = 0xffffffff;
  for (const byte of bytes) crc = CRC_TABLE[(crc ^ byte) & 0xff]! ^ (crc >>> 8);
  return (crc ^ 0xffffffff) >>> 0;
}

/** 1 January 1980, the earliest day ZIP can say: the same files give the same archive. */
const DAY = 0x0021;
/** Names are in UTF-8. */
const UTF8_NAMES = 0x0800;

/**
 * Files put together as one ZIP archive, uncompressed: the sheets are compressed already.
 *
 * @source sources.md#pkware-appnote
 */
export function zipOf(files: readonly AnyFile[]): Uint8Array<ArrayBuffer> {
  const parts: Uint8Array<ArrayBuffer>[] = [];
  const directory: Uint8Array<ArrayBuffer>[] = [];
  let offset = 0;
  for (const file of files) {
    const name = new TextEncoder().encode(file.path);
    const bytes = bytesOf(file);
    const common = [20, UTF8_NAMES, 0, 0, DAY];
    const sizes = [crc32(bytes), bytes.length, bytes.length];
    const local = record(0x04034b50, common, sizes, [name.length, 0]);
    parts.push(local, name, bytes);
    directory.push(record(0x02014b50, [20, ...common], sizes, [name.length, 0, 0, 0, 0], [0, offset]), name);
    offset += local.length + name.length + bytes.length;
  }
  const size = directory.reduce((sum, part) => sum + part.length, 0);
  const end = record(0x06054b50, [0, 0, files.length, files.length], [size, offset], [0]);
  return joined([...parts, ...directory, end]);
}

/** A signature, then alternating runs of 16-bit and 32-bit numbers, low byte first. */
function record(signature: number, ...runs: readonly (readonly number[])[]): Uint8Array<ArrayBuffer> {
  const length = 4 + runs.reduce((sum, run, index) => sum + run.length * (index % 2 === 0 ? 2 : 4), 0);
  const view = new DataView(new ArrayBuffer(length));
  view.setUint32(0, signature, true);
  let at = 4;
  for (const [index, run] of runs.entries())
    for (const value of run) {
      if (index % 2 === 0) view.setUint16(at, value, true);
      else view.setUint32(at, value, true);
      at += index % 2 === 0 ? 2 : 4;
    }
  return new Uint8Array(view.buffer);
}

function joined(parts: readonly Uint8Array<ArrayBuffer>[]): Uint8Array<ArrayBuffer> {
  const all = new Uint8Array(parts.reduce((sum, part) => sum + part.length, 0));
  let at = 0;
  for (const part of parts) {
    all.set(part, at);
    at += part.length;
  }
  return all;
}

import { ok, type Result, refuse } from '@panewright/quantity';
import type { FileRefusal } from '../fileRefusal.ts';

const LUMP = 8192;

/** Letters from code units, in lumps: one call cannot take millions of arguments. */
function lettersFrom(units: Uint16Array | Uint8Array): string {
  const lumps: string[] = [];
  for (let at = 0; at < units.length; at += LUMP)
    lumps.push(String.fromCharCode(...units.subarray(at, at + LUMP)));
  return lumps.join('');
}

/** Bytes as letters one to one, nothing interpreted. */
export const bytesAsLetters = (bytes: Uint8Array): string => lettersFrom(bytes);

/**
 * @refuses FILE_TEXT_DAMAGED at the first byte that no letter can hold
 * @source sources.md#rfc-3629
 */
export function decodeUtf8(bytes: Uint8Array): Result<string, FileRefusal> {
  const units = new Uint16Array(bytes.length);
  let count = 0;
  for (let at = 0; at < bytes.length; ) {
    const lead = bytes[at]!;
    const more =
      lead < 0x80
        ? 0
        : lead >= 0xc2 && lead < 0xe0
          ? 1
          : lead >= 0xe0 && lead < 0xf0
            ? 2
            : lead >= 0xf0 && lead < 0xf5
              ? 3
              : -1;
    const damaged = refuse({ code: 'FILE_TEXT_DAMAGED', encoding: 'utf-8', offset: at });
    if (more < 0 || at + more >= bytes.length) return damaged;
    let code = more === 0 ? lead : lead & (0x3f >> more);
    for (let k = 1; k <= more; k++) {
      const byte = bytes[at + k]!;
      if ((byte & 0xc0) !== 0x80) return damaged;
      code = (code << 6) | (byte & 0x3f);
    }
    const isTooLong = (more === 2 && code < 0x800) || (more === 3 && (code < 0x10000 || code > 0x10ffff));
    if (isTooLong || (code >= 0xd800 && code < 0xe000)) return damaged;
    if (code > 0xffff) {
      units[count++] = 0xd7c0 + (code >> 10);
      units[count++] = 0xdc00 + (code & 0x3ff);
    } else units[count++] = code;
    at += more + 1;
  }
  return ok(lettersFrom(units.subarray(0, count)));
}

/** By its byte order mark, where there is one. */
export function decodeUtf16(bytes: Uint8Array): string | undefined {
  const isLittle = bytes[0] === 0xff && bytes[1] === 0xfe;
  if (!isLittle && !(bytes[0] === 0xfe && bytes[1] === 0xff)) return undefined;
  const units = new Uint16Array((bytes.length - 2) >> 1);
  for (let i = 0; i < units.length; i++) {
    const [first, second] = [bytes[2 * i + 2]!, bytes[2 * i + 3]!];
    units[i] = isLittle ? first | (second << 8) : (first << 8) | second;
  }
  return lettersFrom(units);
}

/**
 * Text as UTF-8 bytes. A lone surrogate becomes the replacement character.
 *
 * @source sources.md#rfc-3629
 */
export function utf8(text: string): Uint8Array {
  const bytes = new Uint8Array(lengthOf(text));
  let at = 0;
  const put = (code: number, after: number) => {
    for (let left = after; left > 0; left--) bytes[at++] = 0x80 | ((code >> (6 * (left - 1))) & 63);
  };
  for (let index = 0; index < text.length; index++) {
    const code = codeAt(text, index);
    if (code < 0x80) bytes[at++] = code;
    else if (code < 0x800) {
      bytes[at++] = 0xc0 | (code >> 6);
      put(code, 1);
    } else if (code < 0x10000) {
      bytes[at++] = 0xe0 | (code >> 12);
      put(code, 2);
    } else {
      bytes[at++] = 0xf0 | (code >> 18);
      put(code, 3);
      index++;
    }
  }
  return bytes;
}

/** The character at a place; half of one becomes the replacement character. */
function codeAt(text: string, index: number): number {
  const code = text.codePointAt(index)!;
  return code >= 0xd800 && code <= 0xdfff ? 0xfffd : code;
}

function lengthOf(text: string): number {
  let length = 0;
  for (let index = 0; index < text.length; index++) {
    const code = codeAt(text, index);
    length += code < 0x80 ? 1 : code < 0x800 ? 2 : code < 0x10000 ? 3 : 4;
    if (code >= 0x10000) index++;
  }
  return length;
}

/** ASCII text as bytes; anything else is a fault of the writer and throws. */
export function ascii(text: string): Uint8Array {
  const bytes = new Uint8Array(text.length);
  for (let i = 0; i < text.length; i++) {
    const code = text.charCodeAt(i);
    if (code > 126) throw new RangeError(`A file of plain letters holds “${text[i]}”.`);
    bytes[i] = code;
  }
  return bytes;
}

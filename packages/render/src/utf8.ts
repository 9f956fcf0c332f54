/**
 * Text as UTF-8 bytes. A lone surrogate becomes the replacement character.
 *
 * @source sources.md#rfc-3629
 */
export function utf8(text: string): Uint8Array {
  const bytes: number[] = [];
  for (const letter of text) {
    let code = letter.codePointAt(0)!;
    if (code >= 0xd800 && code <= 0xdfff) code = 0xfffd;
    if (code < 0x80) bytes.push(code);
    else if (code < 0x800) bytes.push(0xc0 | (code >> 6), 0x80 | (code & 63));
    else if (code < 0x10000) bytes.push(0xe0 | (code >> 12), 0x80 | ((code >> 6) & 63), 0x80 | (code & 63));
    else
      bytes.push(
        0xf0 | (code >> 18),
        0x80 | ((code >> 12) & 63),
        0x80 | ((code >> 6) & 63),
        0x80 | (code & 63),
      );
  }
  return Uint8Array.from(bytes);
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

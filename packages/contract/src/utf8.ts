/** Text as UTF-8. The core has no TextEncoder. Half a character (a lone surrogate) becomes U+FFFD. */
export function utf8(text: string): Uint8Array {
  const bytes = new Uint8Array(3 * text.length);
  let at = 0;
  for (const letter of text) {
    let code = letter.codePointAt(0)!;
    if (code >= 0xd800 && code <= 0xdfff) code = 0xfffd;
    if (code < 0x80) bytes[at++] = code;
    else if (code < 0x800) at = put(bytes, at, code, 0xc0, 1);
    else if (code < 0x10000) at = put(bytes, at, code, 0xe0, 2);
    else at = put(bytes, at, code, 0xf0, 3);
  }
  return bytes.slice(0, at);
}

function put(bytes: Uint8Array, from: number, code: number, mark: number, more: number): number {
  let at = from;
  bytes[at++] = mark | (code >> (6 * more));
  for (let left = more - 1; left >= 0; left--) bytes[at++] = 0x80 | ((code >> (6 * left)) & 0x3f);
  return at;
}

const LETTERS = 'ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/';
const CODES = Uint8Array.from(LETTERS, (letter) => letter.charCodeAt(0));
const VALUES = new Map([...LETTERS].map((letter, value) => [letter, value]));
const PAD = '='.charCodeAt(0);

/** Bytes as base64 text (RFC 4648, with padding). The core has neither Buffer nor btoa. */
export function base64(bytes: Uint8Array): string {
  const codes = new Uint8Array(4 * Math.ceil(bytes.length / 3));
  for (let from = 0, to = 0; from < bytes.length; from += 3, to += 4) {
    const [a = 0, b, c] = [bytes[from], bytes[from + 1], bytes[from + 2]];
    codes[to] = CODES[a >> 2]!;
    codes[to + 1] = CODES[((a & 3) << 4) | ((b ?? 0) >> 4)]!;
    codes[to + 2] = b === undefined ? PAD : CODES[((b & 15) << 2) | ((c ?? 0) >> 6)]!;
    codes[to + 3] = c === undefined ? PAD : CODES[c & 63]!;
  }
  let text = '';
  for (let at = 0; at < codes.length; at += 8192)
    text += String.fromCharCode(...codes.subarray(at, at + 8192));
  return text;
}

/** The bytes a base64 text stands for; undefined where it is none. Line breaks are not skipped. */
export function bytesOfBase64(text: string): Uint8Array | undefined {
  const body = text.replace(/={1,2}$/, '');
  if (text.length % 4 !== 0 || !/^[A-Za-z0-9+/]*$/.test(body) || body.length % 4 === 1) return undefined;
  const bytes = new Uint8Array(Math.floor((body.length * 3) / 4));
  let [held, bits, at] = [0, 0, 0];
  for (const letter of body) {
    held = ((held << 6) | VALUES.get(letter)!) & 0xffff;
    bits += 6;
    if (bits < 8) continue;
    bits -= 8;
    bytes[at++] = (held >> bits) & 0xff;
  }
  return bytes;
}

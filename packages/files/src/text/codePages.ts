import { CODE_PAGES } from './codePageLetters.ts';
import { decodeUtf8 } from './decodeText.ts';

const NAMES: Readonly<Record<string, string>> = {
  'iso-8859-1': '1252',
  'iso-8859-2': 'iso8859_2',
  'iso-8859-15': 'iso8859_15',
  latin1: '1252',
  'us-ascii': '1252',
  ascii: '1252',
};

/** The letters of an encoding's upper half, by any of its names; undefined where it is not known. */
export function lettersOf(encoding: string): string | undefined {
  const name = encoding.toLowerCase().replace(/^(?:windows|ansi|cp|ibm|dos)[-_]?(?=\d)/, '');
  const page = NAMES[name] ?? name.replace(/^8859[-_]?(\d+)$/, 'iso8859_$1');
  return Object.hasOwn(CODE_PAGES, page) ? CODE_PAGES[page] : undefined;
}

export function decodeByPage(bytes: string, letters: string): string {
  return bytes.replace(/[\u0080-\u00ff]/g, (byte) => letters[byte.charCodeAt(0) - 128]!);
}

/**
 * A reader of names of a DXF file whose bytes stand as letters one to one: by code page, by UTF-8, or as they are, with
 * escapes `\U+XXXX` resolved.
 *
 * @returns undefined from the reader where the encoding is not known
 */
export function decodeName(encoding: string): (bytes: string) => string | undefined {
  const letters = lettersOf(encoding);
  const decode = (bytes: string): string | undefined => {
    if (encoding === 'decoded') return bytes;
    if (encoding === 'utf-8') {
      const text = decodeUtf8(Uint8Array.from(bytes, (byte) => byte.charCodeAt(0) & 255));
      return text.ok ? text.value : bytes;
    }
    return letters && decodeByPage(bytes, letters);
  };
  return (bytes) =>
    decode(bytes)?.replace(/\\U\+([0-9A-Fa-f]{4})/g, (_, code: string) =>
      String.fromCharCode(Number.parseInt(code, 16)),
    );
}

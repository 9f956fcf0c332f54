import { base64 } from '@panewright/contract';
import fc from 'fast-check';
import { expect, test } from 'vitest';

// Oracle: RFC 4648, section 10 (sources.md#rfc-4648).
test.each([
  ['', ''],
  ['f', 'Zg=='],
  ['fo', 'Zm8='],
  ['foo', 'Zm9v'],
  ['foob', 'Zm9vYg=='],
  ['fooba', 'Zm9vYmE='],
  ['foobar', 'Zm9vYmFy'],
])('“%s” is %s in base64', (text, coded) => {
  expect(base64(Uint8Array.from(text, (letter) => letter.charCodeAt(0)))).toBe(coded);
});

test('any bytes are coded as the platform codes them', () => {
  fc.assert(
    fc.property(
      fc.uint8Array({ maxLength: 300 }),
      (bytes) => base64(bytes) === Buffer.from(bytes).toString('base64'),
    ),
  );
  const many = new Uint8Array(100_001).fill(7);
  expect(base64(many)).toBe(Buffer.from(many).toString('base64'));
});

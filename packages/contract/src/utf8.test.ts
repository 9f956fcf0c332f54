import { utf8 } from '@panewright/contract';
import fc from 'fast-check';
import { expect, test } from 'vitest';

// Oracle: the platform's own encoder.
test('any text is coded in UTF-8 as the platform codes it', () => {
  fc.assert(
    fc.property(fc.string({ unit: 'binary', maxLength: 60 }), (text) => {
      expect([...utf8(text)]).toEqual([...new TextEncoder().encode(text)]);
    }),
  );
  expect([...utf8('½ €\u{1F9F5}\ud800')]).toEqual([...new TextEncoder().encode('½ €\u{1F9F5}\ufffd')]);
});

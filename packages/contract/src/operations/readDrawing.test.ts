import { base64, bytesOfBase64, callOperation, deriveShapes, utf8 } from '@panewright/contract';
import { defaultCatalogue, emptyJob } from '@panewright/design';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { exampleJob } from '../examples.ts';
import { operations } from './operations.ts';

const ask = async (text: string, more: Record<string, unknown> = {}) =>
  callOperation('readDrawing', { name: 'a file', base64: base64(utf8(text)), ...more });

// RFC 4648: the two ways undo each other.
test('base64 read back is the bytes it was made of, and other text is refused', () => {
  fc.assert(
    fc.property(fc.uint8Array({ maxLength: 200 }), (bytes) => {
      expect(bytesOfBase64(base64(bytes))).toEqual(bytes);
    }),
  );
  for (const text of ['a', 'abc', 'ab!=', '=abc', 'ab=c', 'a==='])
    expect(bytesOfBase64(text)).toBeUndefined();
});

test('an outline read from a drawing is a survey that a job can be made from', async () => {
  const { readDrawing } = operations;
  const answer = await readDrawing.run(readDrawing.input.parse(readDrawing.example), {});
  if (!answer.ok) throw new Error(answer.refusal.code);
  const [found] = answer.value.outlines;
  expect([found!.width, found!.height]).toEqual([expect.closeTo(400, 9), expect.closeTo(300, 9)]);
  const job = {
    ...emptyJob('j', 'j', 'mm' as const),
    openings: [{ ...exampleJob.openings[0]!, survey: found!.survey }],
  };
  const { shape } = deriveShapes(job, defaultCatalogue).openings[0]!;
  expect([shape!.width.value, shape!.height.value]).toEqual([expect.closeTo(400, 9), expect.closeTo(300, 9)]);
  expect(shape!.corners.filter(({ radius }) => Math.abs(radius.value - 40) < 1e-6)).toHaveLength(1);
});

// A DXF without $INSUNITS does not say its unit (DXF reference, HEADER section).
const UNITLESS = `0\nSECTION\n2\nENTITIES\n0\nLWPOLYLINE\n8\n0\n90\n4\n70\n1\n${[
  [0, 0],
  [24, 0],
  [24, 14],
  [0, 14],
]
  .map(([x, y]) => `10\n${x}\n20\n${y}\n`)
  .join('')}0\nENDSEC\n0\nEOF\n`;

test('a drawing that does not say its unit is asked for it, and read once it is told', async () => {
  const asked = await ask(UNITLESS);
  expect(asked).toMatchObject({ ok: false, refusal: { code: 'DRAWING_REFUSED' } });
  expect(asked).toMatchObject({ refusal: { refusal: { code: 'UNIT_NOT_STATED', width: 24, height: 14 } } });
  const told = await ask(UNITLESS, { unit: 'in' });
  // 1 in = 25.4 mm exactly.
  expect(told).toMatchObject({
    ok: true,
    value: { outlines: [{ width: expect.closeTo(609.6, 9), height: expect.closeTo(355.6, 9) }] },
  });
});

test('what is no drawing is refused', async () => {
  expect(await ask('%PDF-1.4')).toMatchObject({ ok: false, refusal: { code: 'DRAWING_REFUSED' } });
  expect(await callOperation('readDrawing', { name: 'x', base64: '!' })).toMatchObject({
    ok: false,
    refusal: { code: 'BYTES_NOT_BASE64' },
  });
});

import {
  changeByHand,
  type OutlineSurvey,
  readLineText,
  readTapsText,
  surveyOutline,
} from '@panewright/contract';
import { bounds } from '@panewright/geometry';
import { mm } from '@panewright/quantity';
import { describe, expect, test } from 'vitest';

/** A square of 400 with roundings of 50, as traced: edges to 0.4 mm, radii to 1 mm, the size to 0.6 mm. */
const bulge = Math.tan(Math.PI / 8);
const traced: OutlineSurvey = {
  method: 'outline',
  segments: [
    [350, 0, 0],
    [400, 50, bulge],
    [400, 350, 0],
    [350, 400, bulge],
    [50, 400, 0],
    [0, 350, bulge],
    [0, 50, 0],
    [50, 0, bulge],
  ].map(([x, y, b]) =>
    b === 0
      ? { kind: 'line' as const, to: { x: x!, y: y! }, sigma: 0.4 }
      : { kind: 'arc' as const, to: { x: x!, y: y! }, bulge: b!, sigma: 0.4, radiusSigma: 1 },
  ),
  sizeSigma: { width: 0.6, height: 0.6 },
  from: { kind: 'photo', name: 'film.jpg', date: '', note: '' },
};

const value = (result: ReturnType<typeof changeByHand>): OutlineSurvey => {
  if (!result.ok) throw new Error(result.refusal.code);
  return result.value;
};

describe('a change by hand', () => {
  const moved = value(changeByHand(traced, traced, { kind: 'edge', edge: 2, outward: mm(3) }, 1));

  test('moves the side it is of and makes the whole as much wider', () => {
    const { width, height } = bounds(surveyOutline(moved));
    expect([width, height]).toEqual([expect.closeTo(403, 6), expect.closeTo(400, 6)]);
  });

  // Oracle: independent errors add in squares. The size ends at the moved edge: √(0.6² + 1²).
  test('is known no better than trace and hand together, and says that it is by hand', () => {
    expect(moved.segments[2]).toMatchObject({ byHand: true, sigma: Math.hypot(0.4, 1) });
    moved.segments.forEach(({ sigma, byHand }, k) => {
      if (k !== 2) expect([sigma, byHand]).toEqual([0.4, undefined]);
    });
    expect(moved.sizeSigma?.width).toBeCloseTo(Math.hypot(0.6, 1), 9);
  });

  test('made twice, of two edges, adds both to the size and neither twice to an edge', () => {
    const again = value(changeByHand(moved, traced, { kind: 'edge', edge: 2, outward: mm(-1) }, 1));
    expect(again.segments[2]!.sigma).toBeCloseTo(Math.hypot(0.4, 1), 9);
    const both = value(changeByHand(again, traced, { kind: 'edge', edge: 6, outward: mm(1) }, 1));
    expect(both.sizeSigma?.width).toBeCloseTo(Math.hypot(0.6, 1, 1), 9);
  });

  // Oracle: the middle of a square corner's rounding lies r (√2 − 1) from the corner, so 1 mm there is 2.41 mm of radius.
  test('of a rounding says how little a hand tells of a radius', () => {
    const [before, after] = [
      traced.segments[1]!,
      value(changeByHand(traced, traced, { kind: 'radius', edge: 1, radius: mm(60) }, 1)).segments[1]!,
    ];
    expect(before.kind === 'arc' && before.radiusSigma).toBe(1);
    expect(after.kind === 'arc' && after.radiusSigma).toBeCloseTo(Math.hypot(1, 1 / (Math.SQRT2 - 1)), 2);
  });

  test('that its neighbours cannot follow is refused', () => {
    expect(changeByHand(traced, traced, { kind: 'edge', edge: 2, outward: mm(-900) }, 1)).toMatchObject({
      refusal: { code: 'RESHAPE_REFUSED', refusal: { code: 'NEIGHBOURS_DO_NOT_MEET', edge: 2 } },
    });
  });
});

test.each([
  [
    '2:620,720 1300.5,650 700,1552',
    {
      photo: 1,
      points: [
        { x: 620, y: 720 },
        { x: 1300.5, y: 650 },
        { x: 700, y: 1552 },
      ],
    },
  ],
  [
    ' 1,2 3,4 ',
    {
      photo: 0,
      points: [
        { x: 1, y: 2 },
        { x: 3, y: 4 },
      ],
    },
  ],
])('taps %j are read', (text, taps) => {
  expect(readTapsText(text)).toEqual({ ok: true, value: taps });
});

test.each(['', '1:', '620', '620,720;3,4', 'x,y', '1:2:3,4'])('taps %j are refused', (text) => {
  expect(readTapsText(text)).toEqual({ ok: false, refusal: { code: 'TAPS_TEXT_UNREADABLE', text } });
});

test('the line meant is one of three', () => {
  expect(readLineText('inner')).toEqual({ ok: true, value: 'inner' });
  expect(readLineText('red')).toMatchObject({ refusal: { code: 'LINE_TEXT_UNREADABLE' } });
});

import { circle, type Outline, point, type Segment, validate } from '@panewright/geometry';
import { mm } from '@panewright/quantity';
import { expect, test } from 'vitest';
import { starOutline } from './testing/starOutline.ts';

const line = (x: number, y: number): Segment => ({ kind: 'line', to: point(x, y) });
const arc = (x: number, y: number, bulge: number): Segment => ({ kind: 'arc', to: point(x, y), bulge });
const codeOf = (...segments: Segment[]) => {
  const result = validate({ segments });
  return result.ok ? 'ok' : result.refusal;
};

test('a sound outline is handed back', () => {
  const disc = circle(point(0, 0), mm(5));
  expect(disc.ok && validate(disc.value)).toEqual(disc);
  expect(codeOf(line(100, 0), line(100, 50), line(0, 50), line(0, 0))).toBe('ok');
});

test('a clockwise outline is refused with its area', () => {
  expect(codeOf(line(0, 50), line(100, 50), line(100, 0), line(0, 0))).toEqual({
    code: 'OUTLINE_CLOCKWISE',
    area: -5000,
  });
});

test('an hourglass is refused where its sides cross', () => {
  expect(codeOf(line(100, 0), line(0, 100), line(100, 100), line(0, 0))).toEqual({
    code: 'OUTLINE_CROSSES_ITSELF',
    where: [1, 3],
    at: point(50, 50),
  });
});

test('an arc that dips through the far side is refused there', () => {
  expect(codeOf(line(100, 0), line(100, 20), arc(0, 20, -1), line(0, 0))).toMatchObject({
    code: 'OUTLINE_CROSSES_ITSELF',
    where: [0, 2],
  });
});

test('an outline that touches itself in a point, or doubles back on itself, is refused', () => {
  const touching = codeOf(line(100, 0), line(100, 50), line(50, 0), line(0, 50), line(0, 0));
  expect(touching).toMatchObject({ code: 'OUTLINE_CROSSES_ITSELF', at: point(50, 0) });
  expect(codeOf(line(100, 0), line(40, 0), line(40, 50), line(0, 0))).toMatchObject({
    code: 'OUTLINE_CROSSES_ITSELF',
    where: [0, 1],
  });
});

test('segments of no length, arcs without bulge and numbers that are none are refused by their index', () => {
  expect(codeOf()).toEqual({ code: 'OUTLINE_EMPTY' });
  expect(codeOf(line(100, 0), line(100, 0), line(0, 50))).toMatchObject({
    code: 'SEGMENT_TOO_SHORT',
    where: 1,
  });
  expect(codeOf(line(100, 0), arc(50, 50, 0), line(0, 0))).toEqual({ code: 'BULGE_ZERO', where: 1 });
  expect(codeOf(line(100, Number.NaN), line(50, 50), line(0, 0))).toEqual({
    code: 'SEGMENT_NOT_FINITE',
    where: 0,
  });
  expect(codeOf(line(100, 0), arc(50, 50, Infinity), line(0, 0))).toEqual({
    code: 'SEGMENT_NOT_FINITE',
    where: 1,
  });
});

test('every outline drawn on two arcs tangent at their joint is sound', () => {
  const eye: Outline = { segments: [arc(100, 0, 0.3), arc(0, 0, 0.3)] };
  expect(validate(eye).ok).toBe(true);
  expect(validate(starOutline(3, 40)).ok).toBe(true);
});

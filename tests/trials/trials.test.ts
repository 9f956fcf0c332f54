import { expect, test } from 'vitest';
import { markTrials } from './markTrials.ts';
import { pairTrials } from './pairTrials.ts';

// Oracles: known true places with known noise; outlines grown by a known distance. `npm run bench -- trials` runs more.
test('stated 95 % regions of taped points hold 93 to 97 % of true places', () => {
  const figures = markTrials(300, 1);
  expect(figures.inside).toBeGreaterThan(0.93);
  expect(figures.inside).toBeLessThan(0.97);
});

test('a tape read half an inch off is named where the geometry can show it', () => {
  const figures = markTrials(150, 2);
  expect(figures.shown).toBeGreaterThan(50);
  expect(figures.named).toBeGreaterThanOrEqual(0.95);
});

test('no pair is parted below 0.9 times the tolerance, or shares a pattern beyond 1.1 times', () => {
  expect(pairTrials(60, 1)).toEqual({ pairs: 60, wronglyShared: 0, wronglyParted: 0 });
});

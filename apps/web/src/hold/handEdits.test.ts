import { type HandPlaced, nearestEdgePlace, type PanelPlan, point } from '@panewright/contract';
import { expect, test } from 'vitest';
import {
  movedBy,
  removedOf,
  withAdded,
  withMoved,
  withPutBack,
  withRemoved,
  withRuled,
} from './handEdits.ts';

// A panel of 600 by 400 mm with sharp corners, measured by hand from them, anticlockwise.
const corner = (x: number, y: number) => ({ kind: 'line', to: point(x, y) }) as const;
const panel = {
  finished: { segments: [corner(600, 0), corner(600, 400), corner(0, 400), corner(0, 0)] },
  edgeNames: ['bottom', 'right', 'top', 'left'],
} as unknown as PanelPlan;
const at = (x: number, y: number) => nearestEdgePlace(panel, point(x, y))!;
const middle = { rule: { on: 'bottom', index: 1 }, place: at(300, 0) };

test('a point moved twice is moved by the sum, and moved back it is the rule’s again', () => {
  const once = withMoved([], middle, at(340, 0), panel)!;
  expect(once).toEqual([{ kind: 'moved', on: 'bottom', index: 1, by: 40 }]);
  const twice = withMoved(once, { ...middle, place: at(340, 0) }, at(330, 0), panel)!;
  expect(movedBy(twice, middle.rule)).toBe(30);
  expect(withMoved(twice, { ...middle, place: at(330, 0) }, at(300, 0), panel)).toEqual([]);
  expect(withRuled(twice, middle)).toEqual([]);
});

test('a point is not moved round a corner onto another edge; the corner’s own may go either way', () => {
  expect(withMoved([], middle, at(600, 200), panel)).toBeNull();
  const own = { rule: { on: 'corner:left-bottom', index: 1 }, place: { ...at(1, 0), at: 0, t: 0 } };
  const back = withMoved([], own, at(0, 30), panel)!;
  expect(back).toEqual([{ kind: 'moved', on: 'corner:left-bottom', index: 1, by: -30 }]);
});

test('added, moved and removed by hand leaves nothing; the rule’s point removed can be put back', () => {
  const added = withAdded([], at(100, 0));
  const its = { rule: null, place: at(100, 0) };
  const moved = withMoved(added, its, at(120, 0), panel)!;
  expect(moved).toEqual([{ kind: 'added', on: 'bottom', at: 120 }] satisfies HandPlaced[]);
  expect(withRemoved(moved, { rule: null, place: at(120, 0) })).toEqual([]);
  const removed = withRemoved([], middle);
  expect(removedOf(removed)).toEqual([middle.rule]);
  expect(withPutBack(removed, middle.rule)).toEqual([]);
});

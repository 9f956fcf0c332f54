import {
  defaultCatalogue,
  derive,
  type Job,
  type LayFrame,
  type LayPlan,
  laidPlaces,
  pushPlaces,
  type ReservedPlace,
  tryPlaces,
  weighLay,
} from '@panewright/design';
import { bounds, intersects, outlineFrom, point } from '@panewright/geometry';
import { expect, test } from 'vitest';
import { jobOf, rectangle } from '../testing/jobs.ts';

const job = jobOf([rectangle('W1', 40, 20, 3), rectangle('W2', 24, 14, 2), rectangle('W3', 30, 12, 2)]);
const fabric = defaultCatalogue.fabrics.find(({ id }) => id === job.choices.fabric)!;
const planOf = (of: Job) => derive(of, defaultCatalogue, 1, 3000).cutting!;
const own = planOf(job).lays[0]!;

const place = (more: Partial<ReservedPlace> = {}): ReservedPlace => ({
  ...{ id: 'f1', fabric: fabric.id, rollWidth: own.rollWidth, why: 'flaw', notes: '' },
  ...{ from: 100, to: 180, near: 500, far: 560 },
  ...more,
});
/** The flaw on every width sold, so that no roll is without it. */
const everywhere = (more: Partial<ReservedPlace> = {}): Job => ({
  ...job,
  reservedPlaces: fabric.rolls.map(({ width }, k) => place({ ...more, id: `f${k}`, rollWidth: width })),
});
const outlineOf = ({ from, to, near, far }: ReservedPlace) => {
  const made = outlineFrom([point(from, near), point(to, near), point(to, far), point(from, far)]);
  if (!made.ok) throw new Error(made.refusal.code);
  return made.value;
};
const frameOf = (lay: LayPlan): LayFrame => ({
  ...{ fabric, rollWidth: lay.rollWidth, spacing: lay.spacing, reserved: lay.reserved },
  pieces: planOf(job).pieces.filter((piece) => piece.fabric === fabric.id),
});

// By the exact outlines of the geometry package, not by the packing engine's own check.
test('no piece of the plan lies on a flaw, and what is left over keeps off it too', () => {
  expect(own.placements.some(({ outline }) => intersects(outline, outlineOf(place())))).toBe(true);
  const [lay] = planOf(everywhere()).lays;
  const [flaw] = lay!.reserved;
  expect(lay!.placements.map(({ outline }) => intersects(outline, outlineOf(flaw!)))).not.toContain(true);
  for (const { x, y, along, across } of lay!.leaves) {
    const clear = x >= flaw!.to || x + along <= flaw!.from || y >= flaw!.far || y + across <= flaw!.near;
    expect(clear).toBe(true);
  }
});

test('cloth kept across the whole roll lengthens the lay by no less than the part of it that lies under pieces', () => {
  const [lay] = planOf(everywhere({ from: 0, to: 300, near: 0, far: 6000, why: 'kept' })).lays;
  expect(Math.min(...lay!.placements.map(({ outline }) => bounds(outline).minX))).toBeGreaterThanOrEqual(
    300 + lay!.spacing - 1e-6,
  );
  expect(lay!.chain!.from).toBe(lay!.reserved[0]!.id);
});

test('a place on a roll of another width is not minded', () => {
  const elsewhere = planOf({ ...job, reservedPlaces: [place({ rollWidth: 5999 })] }).lays[0]!;
  expect(elsewhere.length.value).toBe(own.length.value);
  expect(elsewhere.reserved).toEqual([]);
});

test('the chain of a lay begins at the cut end, ends where the lay ends, and each piece touches the next along the roll', () => {
  const { copies, from, play } = own.chain!;
  expect(from).toBeNull();
  const boxes = copies.map(({ piece, copy }) =>
    bounds(own.placements.find((one) => one.piece === piece && one.copy === copy)!.outline),
  );
  // Outlines lie up to 0.3 mm inside the polygons that are laid.
  const slack = 0.7 * (copies.length + 1);
  expect(boxes[0]!.minX).toBeLessThanOrEqual(slack + play);
  expect(Math.abs(boxes.at(-1)!.maxX - own.length.value)).toBeLessThanOrEqual(slack + play);
  boxes.slice(1).forEach((box, k) => {
    expect(box.minX).toBeLessThanOrEqual(boxes[k]!.maxX + own.spacing + slack + play);
    expect(box.minY).toBeLessThanOrEqual(boxes[k]!.maxY + own.spacing);
    expect(box.maxY).toBeGreaterThanOrEqual(boxes[k]!.minY - own.spacing);
  });
});

test('a lay weighed by its places comes to what the plan says of it, and one a piece short is refused', () => {
  const places = laidPlaces(own, planOf(job).pieces);
  const least = defaultCatalogue.habits.leastOffcut;
  const weighed = weighLay(frameOf(own), places, least);
  if (!weighed.ok) throw new Error(weighed.refusal.code);
  expect(weighed.value.length).toBeCloseTo(own.length.value, 6);
  expect(weighed.value).toMatchObject({ bought: own.bought, leaves: own.leaves, rollWidth: own.rollWidth });
  expect(weighLay(frameOf(own), places.slice(1), least)).toMatchObject({
    refusal: { code: 'LAY_DEMAND_NOT_MET' },
  });
});

test('pieces spread by hand are pushed together again, each as it is turned, and none through a flaw', () => {
  const spread = laidPlaces(own, planOf(job).pieces).map((one) => ({ ...one, x: one.x * 1.5, held: true }));
  const pushed = pushPlaces(frameOf(own), spread);
  if (!pushed.ok) throw new Error(pushed.refusal.code);
  const length = tryPlaces(frameOf(own), pushed.value);
  const before = tryPlaces(frameOf(own), spread);
  expect(length.ok && before.ok && length.value < before.value).toBe(true);
  expect(pushed.value.map(({ of, turn, held }) => ({ of, turn, held }))).toEqual(
    spread.map(({ of, turn, held }) => ({ of, turn, held })),
  );
  const flawed = { ...frameOf(own), reserved: [place({ from: 0, to: 20, near: 0, far: 6000 })] };
  const moved = spread.map((one) => ({ ...one, x: one.x + 40 }));
  const beside = pushPlaces(flawed, moved);
  expect(beside.ok && tryPlaces(flawed, beside.value).ok).toBe(true);
  expect(tryPlaces(flawed, pushed.value)).toMatchObject({ refusal: { code: 'LAY_MEETS_RESERVED' } });
});

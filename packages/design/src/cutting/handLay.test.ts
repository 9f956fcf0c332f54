import {
  defaultCatalogue,
  derive,
  drawPlaces,
  type Job,
  type LaidPlace,
  type LayPlan,
  laidPlaces,
  startLaySearch,
  stepLaySearch,
  tryPlaces,
} from '@panewright/design';
import { intersects } from '@panewright/geometry';
import { expect, test } from 'vitest';
import { jobOf, rectangle } from '../testing/jobs.ts';

const job = jobOf([rectangle('W1', 40, 20, 3), rectangle('W2', 24, 14, 2), rectangle('W3', 30, 12, 2)]);
/** Panels are called by their pattern: the first opening of each. */
const [P1, P2, P3] = derive(job, defaultCatalogue, 1, 0).patterns.map(
  ({ pattern }) => `${pattern}-panel`,
) as [string, string, string];
const { pieces } = derive(job, defaultCatalogue, 1, 0).cutting!;
const layOf = (of: Job) => derive(of, defaultCatalogue, 1, 0).cutting!.lays[0]!;
const codesOf = (of: Job) => derive(of, defaultCatalogue, 1, 0).findings.map(({ code }) => code);

/** Every copy where the lay has it; those named are held, and moved along the roll by `shift`. */
const placesOf = (lay: LayPlan, held: readonly string[] = [], shift = 0): LaidPlace[] =>
  laidPlaces(lay, pieces).map((place, k) => {
    const is = held.includes(lay.placements[k]!.piece);
    return { ...place, x: place.x + (is ? shift : 0), held: is };
  });

const withLay = (places: readonly LaidPlace[], rollWidth: number, of = job): Job => ({
  ...of,
  laysByHand: [{ fabric: of.choices.fabric, rollWidth, places: [...places] }],
});

/** No two outlines meet: by the exact outlines, not by the packing engine's own check. */
const apart = (lay: LayPlan): boolean =>
  lay.placements.every((a, k) => lay.placements.slice(k + 1).every((b) => !intersects(a.outline, b.outline)));

test('a lay left as it was laid is that lay, and names what binds its length', () => {
  const own = layOf(job);
  const plan = layOf(withLay(placesOf(own, [P1]), own.rollWidth));
  expect(plan.placements.map(({ place }) => place.shift)).toEqual(
    own.placements.map(({ place }) => place.shift),
  );
  expect(plan.byHand?.held).toEqual([{ piece: P1, copy: 0 }]);
  expect(plan.byHand?.automatic.length).toBeCloseTo(own.length.value, 6);
  expect(own.byHand).toBeNull();
  expect(own.binds.length).toBeGreaterThan(0);
});

test('a panel carried a metre along the roll stays there, alone binds the length, and lengthens the lay by as much', () => {
  const own = layOf(job);
  const last = own.placements.find(
    ({ piece, copy }) => piece === own.binds[0]!.piece && copy === own.binds[0]!.copy,
  )!;
  const panel = last.piece.endsWith('panel') ? last.piece : P1;
  const plan = layOf(withLay(placesOf(own, [panel], 1000), own.rollWidth));
  expect(plan.byHand?.held).toEqual([{ piece: panel, copy: 0 }]);
  expect(plan.binds).toEqual([{ piece: panel, copy: 0 }]);
  const before = own.placements.find(({ piece }) => piece === panel)!.place.shift.x;
  const after = plan.placements.find(({ piece }) => piece === panel)!.place.shift.x;
  expect(after - before).toBeCloseTo(1000, 6);
  expect(apart(plan)).toBe(true);
});

test('only held pieces named: the rest is laid about them', () => {
  const own = layOf(job);
  const held = placesOf(own, [P2], 300).filter((place) => place.held);
  const plan = layOf(withLay(held, own.rollWidth));
  expect(plan.placements).toHaveLength(own.placements.length);
  expect(plan.placements.find(({ piece }) => piece === P2)!.place.shift.x).toBeCloseTo(held[0]!.x, 9);
  expect(apart(plan)).toBe(true);
});

test('a lay that nothing holds is used while it is not the dearer one', () => {
  const own = layOf(job);
  const far = placesOf(
    own,
    own.placements.map(({ piece }) => piece),
    5000,
  ).map((place) => ({ ...place, held: false }));
  expect(layOf(withLay(far, own.rollWidth)).byHand).toBeNull();
  expect(layOf(withLay(placesOf(own), own.rollWidth)).byHand?.held).toEqual([]);
});

test('two held pieces that would overlap after a change: one stays, the other is laid anew and named', () => {
  const own = layOf(job);
  const held = placesOf(own, [P1, P2, P3]);
  const grown = { ...job, choices: { ...job.choices, fit: { all: 100, edges: {} } } };
  const changed = withLay(held, own.rollWidth, grown);
  expect(codesOf(changed)).toContain('LAY_PLACES_GIVEN_UP');
  expect(apart(layOf(changed))).toBe(true);
});

const frame = (lay: LayPlan) => ({
  fabric: defaultCatalogue.fabrics.find(({ id }) => id === lay.fabric)!,
  rollWidth: lay.rollWidth,
  pieces,
  spacing: lay.spacing,
  reserved: lay.reserved,
});

test('a longer search never gives a longer lay, keeps what is held, and its places are a lay of the job', () => {
  const own = layOf(job);
  for (const held of [[], [P2]]) {
    const begun = startLaySearch(frame(own), placesOf(own, held), 1, 300_000);
    if (!begun.ok) throw new Error(begun.refusal.code);
    expect(begun.value.length).toBeCloseTo(own.length.value, 6);
    let search = begun.value;
    for (let k = 0; k < 3; k++) {
      const next = stepLaySearch(search, 50_000);
      expect(next.length).toBeLessThanOrEqual(search.length);
      expect(next.length).toBeGreaterThanOrEqual(next.bound - 1e-6);
      search = next;
    }
    const plan = layOf(withLay(search.places, own.rollWidth));
    expect(plan.length.value).toBeCloseTo(search.length, 6);
    expect(apart(plan)).toBe(true);
    expect(plan.byHand?.held.map(({ piece }) => piece)).toEqual(held);
  }
});

test('a place that is taken is told by the names of both, and drawn where it was asked for', () => {
  const own = layOf(job);
  const places = placesOf(own);
  expect(tryPlaces(frame(own), places)).toMatchObject({ ok: true });
  const onto = places.map((place, k) => (k === 1 ? { ...place, x: places[0]!.x, y: places[0]!.y } : place));
  expect(tryPlaces(frame(own), onto)).toMatchObject({ ok: false, refusal: { code: 'LAY_PIECES_OVERLAP' } });
  expect(drawPlaces(frame(own), onto)[1]!.place.shift).toEqual(drawPlaces(frame(own), onto)[0]!.place.shift);
});

test('a roll no longer sold and a piece no longer cut are told', () => {
  const own = layOf(job);
  expect(codesOf(withLay(placesOf(own, [P1]), 1234))).toContain('LAY_ROLL_NOT_SOLD');
  expect(layOf(withLay(placesOf(own, [P1]), 1234)).byHand).toBeNull();
  const fewer = { ...job, openings: job.openings.slice(1) };
  const gone = withLay(placesOf(own, [P1, P2]), own.rollWidth, fewer);
  expect(codesOf(gone)).toContain('LAY_PLACES_GIVEN_UP');
  // What was the second pattern is now the first: its panel is known by its opening.
  expect(layOf(gone).byHand?.held).toEqual([{ piece: P1, copy: 0 }]);
  const before = own.placements.find(({ piece }) => piece === P2)!.place.shift;
  expect(layOf(gone).placements.find(({ piece }) => piece === P1)!.place.shift).toEqual(before);
});

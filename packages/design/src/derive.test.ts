import {
  type Catalogue,
  defaultCatalogue,
  defaultChoices,
  derive,
  derivePanel,
  deriveShapes,
  type Plan,
} from '@panewright/design';
import { area, contains, containsOutline, length, moveOutline } from '@panewright/geometry';
import { expect, test } from 'vitest';
import { demoJob, jobOf, rectangle } from './testing/jobs.ts';

const inch = 25.4;
const noFit = { fit: { all: 0, edges: {} } };
const codes = (plan: Plan) => plan.findings.map(({ code }) => code);

/** Every number in a value, with the path to it. */
function* numbersIn(value: unknown, path = ''): Generator<[string, number]> {
  if (typeof value === 'number') yield [path, value];
  else if (value && typeof value === 'object')
    for (const [key, inner] of Object.entries(value)) yield* numbersIn(inner, `${path}.${key}`);
}

// Common practice of the trade, no source: six hold points for a panel of 52 × 24 in, six 3 in patches, one yard of 54 in cloth.
test('a panel of 52 × 24 in has six hold points and comes with its six patches out of one yard of 54 in roll', () => {
  const catalogue: Catalogue = {
    ...defaultCatalogue,
    fabrics: [
      {
        ...defaultCatalogue.fabrics[0]!,
        selvage: 0,
        rolls: [{ width: 54 * inch, step: 36 * inch, price: 1890 }],
      },
    ],
  };
  const plan = derive(jobOf([rectangle('W1', 52, 24, 3)], noFit), catalogue, 1);
  const [hold] = plan.hold;
  expect(hold!.points).toHaveLength(6);
  expect(hold!.points.filter(({ kind }) => kind === 'corner')).toHaveLength(4);
  const [lay] = plan.cutting!.lays;
  expect(lay!.placements).toHaveLength(7);
  expect(lay!.length.value).toBeLessThanOrEqual(36 * inch);
  const cloth = plan.takeOff!.materials.find(({ kind }) => kind === 'fabric')!;
  expect(cloth.packs.value).toBe(1);
});

test('its middle hold point sits at 26 in of the 52 in edge when gaps to 27 in are let pass, else there is one gap more', () => {
  const upTo = (most: number) => ({
    ...noFit,
    hold: { ...defaultChoices.hold, spacing: 24 * inch, upTo: most * inch },
  });
  const bottomOf = (plan: Plan) => plan.hold[0]!.edges.find(({ edge }) => edge === 'bottom')!;
  const let27 = bottomOf(deriveShapes(jobOf([rectangle('W1', 52, 24, 3)], upTo(27)), defaultCatalogue));
  expect(let27.positions[1]! / inch).toBeCloseTo(26, 2);
  const strict = bottomOf(deriveShapes(jobOf([rectangle('W1', 52, 24, 3)], upTo(24)), defaultCatalogue));
  expect(strict.gaps).toBe(let27.gaps + 1);
});

// Oracle: reference rows B4, B5 (perimeter of a rounded rectangle in closed form; Steiner's formula), 1000 × 600, r 75, + 6.35.
test('a 1000 × 600 opening of radius 75 with 6.35 mm allowance has the edge length and area of Steiner’s formula', () => {
  const metric = rectangle('W1', 1000 / inch, 600 / inch, 75 / inch);
  const plan = deriveShapes(jobOf([metric], { fit: { all: 6.35, edges: {} } }), defaultCatalogue);
  const panel = plan.panels[0]!;
  expect(length(panel.finished)).toBeCloseTo(3111.137, 1);
  expect(panel.area.value / 614_800.503).toBeCloseTo(1, 5);
  expect(panel.edging.kind === 'binding' && panel.edging.cutLength.value).toBeCloseTo(
    3111.137 + 50 + 2 * 25,
    1,
  );
});

test('cut line, stitch line and band lie inside one another, and every pocket lies in its panel', () => {
  const plan = deriveShapes(demoJob(), defaultCatalogue);
  for (const panel of plan.panels) {
    expect(containsOutline(panel.finished, panel.cut)).toBe(true);
    expect(containsOutline(panel.cut, panel.stitch[0]!)).toBe(true);
    expect(containsOutline(panel.stitch[0]!, panel.band!)).toBe(true);
  }
  for (const hold of plan.hold) {
    const panel = plan.panels.find(({ pattern }) => pattern === hold.pattern)!;
    for (const point of hold.points) {
      expect(containsOutline(panel.cut, point.pocket!)).toBe(true);
      expect(contains(point.pocket!, point.centre)).toBe('inside');
      // A patch is 3 in wide and deep: never larger than its blank, and no sliver.
      expect(area(point.pocket!)).toBeLessThan(76.2 ** 2);
      expect(area(point.pocket!)).toBeGreaterThan(0.5 * 76.2 ** 2);
    }
  }
});

test('the panel of one opening alone is the whole plan’s, patch names apart, before and after another magnet is chosen', () => {
  const one = demoJob();
  const other = { ...one, choices: { ...one.choices, hold: { ...one.choices.hold, outside: 'disc-15x3' } } };
  for (const job of [one, other])
    for (const id of ['W3', 'W6', 'W9']) {
      const plan = deriveShapes(job, defaultCatalogue);
      const alone = derivePanel(job, defaultCatalogue, id)!;
      const { pattern } = alone.pattern;
      const hold = plan.hold.find((whole) => whole.pattern === pattern)!;
      expect(alone.panel).toEqual(plan.panels.find((whole) => whole.pattern === pattern));
      expect(alone.hold.openings).toEqual(hold.openings.filter(({ opening }) => opening === id));
      expect(alone.hold.points).toEqual(hold.points.map((point) => ({ ...point, pocketPiece: '' })));
    }
});

test('a hem is cut its width beyond the finished edge, a hot-cut edge is the finished edge', () => {
  const made = (finish: typeof defaultChoices.finish) =>
    deriveShapes(jobOf([rectangle('W1', 24, 14, 2.5)], { finish }), defaultCatalogue).panels[0]!;
  const hem = made({ kind: 'hem', width: 20 });
  expect(hem.cutWidth.value - hem.finishedWidth.value).toBeCloseTo(40, 6);
  const hot = made({ kind: 'hotCut' });
  expect(hot.cut).toEqual(hot.finished);
  expect(hot.stitch).toHaveLength(0);
});

test('an allowance of its own on one edge moves that edge alone', () => {
  const even = deriveShapes(jobOf([rectangle('W1', 30, 20, 0)], noFit), defaultCatalogue).panels[0]!;
  const uneven = deriveShapes(
    jobOf([rectangle('W1', 30, 20, 0)], { fit: { all: 0, edges: { top: 12 } } }),
    defaultCatalogue,
  ).panels[0]!;
  expect(uneven.finishedHeight.value - even.finishedHeight.value).toBeCloseTo(12, 3);
  expect(uneven.finishedWidth.value).toBeCloseTo(even.finishedWidth.value, 3);
});

test('the demo’s nine windows need six patterns: two pairs repeat and one is turned over', () => {
  const plan = deriveShapes(demoJob(), defaultCatalogue);
  const served = plan.patterns.map(({ members }) =>
    members.map(({ opening, turnedOver }) => (turnedOver ? `${opening} turned over` : opening)).join(', '),
  );
  expect(served).toEqual(['W1, W2', 'W3, W4', 'W5, W6 turned over', 'W7', 'W8', 'W9']);
});

test('a pattern put in place covers its opening within the stated deviation', () => {
  const plan = deriveShapes(demoJob(), defaultCatalogue);
  for (const pattern of plan.patterns)
    for (const member of pattern.members) {
      const own = plan.openings.find(({ opening }) => opening === member.opening)!.shape!;
      const placed = moveOutline(member.place, pattern.outline);
      // Areas of shapes within d of each other differ by at most length × d (Steiner).
      const most = length(own.outline) * member.deviation + Math.PI * member.deviation ** 2 + 1e-3;
      expect(Math.abs(area(placed) - area(own.outline))).toBeLessThanOrEqual(most);
    }
});

test('cloth with two faces makes the turned-over panel a piece of its own', () => {
  const one = demoJob();
  const same = derive(one, defaultCatalogue, 1);
  const differ = derive({ ...one, choices: { ...one.choices, fabric: 'mesh-sand' } }, defaultCatalogue, 1);
  const panelsOf = (plan: Plan) =>
    plan.cutting!.pieces.filter(({ kind, pattern }) => kind === 'panel' && pattern === 'P3');
  expect(panelsOf(same)).toHaveLength(1);
  const two = panelsOf(differ);
  expect(two).toHaveLength(2);
  expect(two.map(({ turnedOver }) => turnedOver)).toEqual([false, true]);
  expect(area(two[0]!.outline)).toBeCloseTo(area(two[1]!.outline), 6);
  expect(codes(differ)).toContain('TURNED_OVER_FACES_DIFFER');
});

test('poles: inside magnets show the opposite pole of the panel’s', () => {
  for (const hold of deriveShapes(demoJob(), defaultCatalogue).hold)
    for (const { poles } of hold.openings) expect(poles.insideOut).not.toBe(poles.panelOut);
});

test('the demo’s plan is complete, finite, and the same each time', () => {
  const plan = derive(demoJob(), defaultCatalogue, 1);
  for (const [path, value] of numbersIn(plan)) expect(Number.isFinite(value), path).toBe(true);
  expect(plan.cutting!.lays.flatMap(({ placements }) => placements)).toHaveLength(
    plan.cutting!.pieces.reduce((sum, { count }) => sum + count, 0),
  );
  expect(plan.price!.byOpening.reduce((sum, { price }) => sum + price, 0)).toBe(plan.price!.price.value);
  expect(derive(demoJob(), defaultCatalogue, 1)).toEqual(plan);
});

test('an opening that cannot be worked out is a stop of its own and leaves the others be', () => {
  const lame = rectangle('W2', 24, 14, 2.5);
  lame.survey.readings = lame.survey.readings.filter(({ of }) => of !== 'top');
  const plan = derive(jobOf([rectangle('W1', 24, 14, 2.5), lame]), defaultCatalogue, 1);
  expect(plan.findings.find(({ code }) => code === 'READING_MISSING')).toMatchObject({
    severity: 'stop',
    where: { opening: 'W2' },
    numbers: { readings: 'top' },
  });
  expect(plan.panels).toHaveLength(1);
});

test('a material the catalogue lacks is named', () => {
  const plan = derive(jobOf([rectangle('W1', 24, 14, 2.5)], { fabric: 'no-such' }), defaultCatalogue, 1);
  expect(plan.findings[0]).toMatchObject({
    severity: 'stop',
    code: 'ITEM_NOT_IN_CATALOGUE',
    numbers: { id: 'no-such' },
  });
  expect(plan.panels).toHaveLength(0);
  expect(plan.price!.total.value).toBe(0);
});

test('a panel wider than every roll is refused with both widths', () => {
  const plan = derive(jobOf([rectangle('W1', 90, 80, 3)]), defaultCatalogue, 1);
  expect(plan.findings.find(({ code }) => code === 'PIECE_WIDER_THAN_ROLL')).toMatchObject({
    severity: 'stop',
    numbers: { usableWidth: 1816.8 },
  });
});

test('each panel’s binding is one whole length of its roll, and no roll is cut beyond its length', () => {
  const plan = derive(demoJob(), defaultCatalogue, 1);
  const [strips] = plan.cutting!.strips;
  const cuts = strips!.stocks.flatMap((stock) => stock.cuts);
  expect(cuts.map((cut) => cut.for).sort()).toEqual(plan.openings.map(({ opening }) => opening));
  for (const stock of strips!.stocks)
    expect(stock.cuts.reduce((sum, { length: cut }) => sum + cut, 0) + stock.left).toBeCloseTo(
      strips!.stockLength,
      1,
    );
  expect(strips!.stocks.length).toBeGreaterThanOrEqual(strips!.leastStocks);
});

// Oracle: four discs of 20 × 5 mm at 7.5 g/cm³ (handbook density, from memory) weigh 47.1 g by hand.
test('a panel weighs its magnets, patches and binding as well as its cloth', () => {
  const plan = deriveShapes(jobOf([rectangle('W1', 24, 14, 2.5)]), defaultCatalogue);
  const [panel] = plan.panels;
  const cloth = (area(panel!.cut) / 1e6) * 475;
  expect(panel!.mass.value).toBeGreaterThan(cloth + 47.1);
  expect(panel!.mass.value).toBeLessThan(cloth + 47.1 + 45);
  expect(plan.hold[0]!.openings[0]!.margin!.weight).toBeCloseTo((panel!.mass.value / 1000) * 9.80665, 9);
});

test('a panel that its magnets cannot carry slides, and does not wait for wind', () => {
  const lounge = deriveShapes(demoJob(), defaultCatalogue)
    .hold.flatMap(({ openings }) => openings)
    .at(-1)!;
  expect(lounge.opening).toBe('W9');
  expect(lounge.margin).toMatchObject({ mode: 'slip', letsGoAt: 0 });
});

test('every panel of a vehicle is to come off before driving, whichever window is the driver’s', () => {
  const cautions = deriveShapes(demoJob(), defaultCatalogue).findings.filter(
    ({ code }) => code === 'REMOVE_BEFORE_DRIVING',
  );
  expect(cautions.map(({ where }) => where.opening)).toEqual(['W8', undefined]);
});

test('a sharp corner too tight for its binding is named by the sides it lies between', () => {
  const plan = deriveShapes(jobOf([rectangle('W1', 24, 14, 0)]), defaultCatalogue);
  const edges = plan.findings
    .filter(({ code }) => code === 'CORNER_TOO_TIGHT_FOR_BINDING')
    .map(({ where }) => where.edge);
  expect(edges).toContain('corner:bottom-right');
});

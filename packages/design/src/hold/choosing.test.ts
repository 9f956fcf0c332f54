import {
  bestChoice,
  type ChoiceInput,
  choosing,
  defaultCatalogue,
  defaultFasteners,
  lowMargin,
  type MeetingInput,
  meeting,
  pairStrength,
  steelStrength,
  thickGlassAnswers,
  USUAL_CLOTH,
} from '@panewright/design';
import { type Outline, offsetOne, point, roundedPolygon } from '@panewright/geometry';
import { pull } from '@panewright/magnets';
import { mm, tesla } from '@panewright/quantity';
import { describe, expect, test } from 'vitest';
import { patchAt } from './pocket.ts';

function value<T>(result: { ok: true; value: T } | { ok: false; refusal: { code: string } }): T {
  if (!result.ok) throw new Error(result.refusal.code);
  return result.value;
}

const panel: Outline = value(
  roundedPolygon([point(0, 0), point(620, 0), point(620, 380), point(0, 380)], mm(60)),
);
const band = value(offsetOne(panel, mm(-11)));
const glass = value(offsetOne(panel, mm(-6)));
const pocketsOf = (size: number): Omit<MeetingInput, 'outside' | 'inside'>[] =>
  [
    { foot: point(310, 0), inward: Math.PI / 2 },
    { foot: point(17.57, 17.57), inward: Math.PI / 4 },
  ].map(({ foot, inward }) => ({
    place: { pocket: patchAt(panel, foot, inward, size)!, foot, inward },
    room: band,
    seam: 6,
    ease: 1,
    glass,
    tapeMargin: 2,
    flange: 0,
  }));

const input = (gap: number, more: Partial<ChoiceInput> = {}): ChoiceInput => ({
  magnets: defaultCatalogue.magnets,
  steel: [],
  gap: { corner: gap, edge: gap },
  hottest: 70,
  friction: { low: 0.15, high: 0.35 },
  load: {
    ...USUAL_CLOTH,
    area: 235_600,
    weight: 1.1,
    openness: 0.05,
    wind: 1.5,
    gustFactor: 1.66,
  },
  inOpening: (p) => p,
  placing: {
    rim: {
      finished: panel,
      edgeNames: ['corner:bl', 'bottom', 'corner:br', 'right', 'corner:tr', 'top', 'corner:tl', 'left'],
    },
    spacing: 609.6,
    upTo: 685.8,
    zones: [],
    centreOf: ({ at, inward }) => point(at.x + 40 * Math.cos(inward), at.y + 40 * Math.sin(inward)),
    apart: 76.2,
    hand: [],
    alike: 3,
  },
  pockets: pocketsOf(76.2),
  asked: 1,
  ...more,
});

describe('which magnet, through 4 mm of glass', () => {
  const { choices, rejected } = choosing(input(6.1));

  test('every pair is either ranked or rejected with a reason', () => {
    expect(choices.length + rejected.length).toBe(25);
    expect(choices.length).toBeGreaterThan(0);
    for (const { because } of rejected) expect(because.length).toBeGreaterThan(0);
  });

  test('a choice meets the margin, worked out from the start, and one with fewer points comes first', () => {
    for (const choice of choices) {
      const [outside, inside] = [choice.outside, choice.inside].map(
        (id) => defaultCatalogue.magnets.find((one) => one.id === id)!,
      );
      const strength = value(
        pairStrength({
          outside: outside!,
          inside: inside!,
          gap: 6.1,
          hottest: 70,
          friction: { low: 0.15, high: 0.35 },
        }),
      );
      const held = choice.layout.points.map(({ kind, centre }, number) => ({
        number,
        kind,
        x: centre.x,
        y: centre.y,
        strength,
      }));
      expect(lowMargin(held, input(6.1).load) as number).toBeGreaterThanOrEqual(1);
      expect(held).toHaveLength(choice.points);
    }
    for (let k = 1; k < choices.length; k++) {
      expect(choices[k]!.points).toBeGreaterThanOrEqual(choices[k - 1]!.points);
      if (choices[k]!.points === choices[k - 1]!.points)
        expect(choices[k]!.cost).toBeGreaterThanOrEqual(choices[k - 1]!.cost);
    }
  });

  test('plain N42 in a thin disc is rejected for the heat of 90 °C, with the limit it bears', () => {
    const hot = choosing(input(6.1, { hottest: 90 })).rejected;
    const own = hot.find(({ outside, inside }) => outside === 'disc-10x3' && inside === 'disc-10x3')!;
    const heat = own.because.find(({ code }) => code === 'TOO_HOT_FOR_MAGNET')!;
    expect(heat.code === 'TOO_HOT_FOR_MAGNET' && heat.limit).toBeLessThan(90);
  });
});

test('a pocket too small rejects the large discs for their size', () => {
  const { rejected } = choosing(input(6.1, { pockets: pocketsOf(40) }));
  const own = rejected.find(({ outside, inside }) => outside === 'disc-25x5' && inside === 'disc-25x5')!;
  const [reason] = own.because;
  expect(reason!.code).toBe('POCKET_TOO_SMALL_FOR_MAGNET');
});

// Oracle: a plane of high permeability mirrors the magnet, so steel at 3 mm pulls as an equal magnet at 6 mm.
test('steel pulls at most as an equal magnet at twice the gap, and a narrow strip is counted down', () => {
  const magnet = defaultCatalogue.magnets.find(({ id }) => id === 'disc-20x5')!;
  const strip = { id: 's', width: 40, thickness: 3, pricePerMetre: 500 };
  const across = { outside: magnet, gap: 3, hottest: 20, friction: { low: 0.15, high: 0.35 } };
  const wide = value(steelStrength({ ...across, steel: strip }));
  const body = { kind: 'disc', diameter: mm(20), thickness: mm(5) } as const;
  const mirrored = value(
    pull({ a: body, b: body, remanenceA: tesla(1.28), remanenceB: tesla(1.28), gap: mm(6.06) }),
  );
  // The mirror pair with the recoil taken off: 0.94 of it.
  expect(wide.pull.nominal / mirrored).toBeGreaterThan(0.92);
  expect(wide.pull.nominal / mirrored).toBeLessThan(0.96);
  const narrow = value(steelStrength({ ...across, steel: { ...strip, width: 20 } }));
  expect(narrow.pull.low / wide.pull.low).toBeCloseTo(0.5, 9);
  const thin = steelStrength({ ...across, steel: { ...strip, thickness: 0.3 } });
  expect(thin.ok ? {} : thin.refusal).toMatchObject({ code: 'PULL_REFUSED', refusal: 'STEEL_SATURATES' });
});

// Oracle: the whole ranking, which stops at nothing.
test('the first choice worked out alone is the first of the ranking, or none where it has none', () => {
  for (const one of [
    input(6.1),
    input(6.1, { hottest: 90 }),
    input(6.1, { pockets: pocketsOf(40) }),
    input(19.1, { load: { ...input(19.1).load, wind: 4 } }),
  ])
    expect(bestChoice(one)).toEqual(choosing(one).choices[0]);
});

describe('a double pane of 17 mm', () => {
  const thick = input(19.1, { load: { ...input(19.1).load, wind: 4 } });

  test('no pair of the catalogue holds, each for a stated reason', () => {
    const { choices, rejected } = choosing(thick);
    expect(choices).toHaveLength(0);
    expect(rejected.every(({ because }) => because.some(({ code }) => code === 'MARGIN_TOO_LOW'))).toBe(true);
  });

  test('what is offered instead holds when worked out again, and the untried are said to be untried', () => {
    const answers = thickGlassAnswers({
      choice: thick,
      pocketOf: pocketsOf,
      mostPocket: 130,
      frameGap: 1.1,
      fasteners: defaultFasteners,
    });
    const codes = answers.map(({ code }) => code);
    expect(codes).toContain('STEEL_ON_FRAME');
    expect(codes).toContain('FASTENER_TO_BE_TRIED');
    expect(codes.some((code) => code === 'LARGER_DISCS' || code === 'BLOCKS')).toBe(true);
    for (const answer of answers) {
      if (answer.code === 'LARGER_DISCS' || answer.code === 'BLOCKS') {
        expect(answer.choice.margin as number).toBeGreaterThanOrEqual(1);
        expect(answer.touching).toBeGreaterThan(100);
        const { shape } = answer.magnet;
        const face =
          shape.kind === 'disc'
            ? ({ kind: 'disc', radius: shape.diameter / 2 } as const)
            : ({ kind: 'block', along: shape.width, across: shape.height } as const);
        for (const pocket of pocketsOf(answer.pocket))
          expect(meeting({ ...pocket, outside: face, inside: face }).ok).toBe(true);
      }
      if (answer.code === 'STEEL_ON_FRAME') expect(answer.margin as number).toBeGreaterThanOrEqual(1);
      if (answer.code === 'FASTENER_TO_BE_TRIED') expect(answer.pullNeeded).toBeGreaterThan(0.1);
    }
  });
});

import { readFileSync } from 'node:fs';
import type { Job } from '@panewright/design';
import { movePoint } from '@panewright/geometry';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { bareLengthText, fineLengthText, lengthText } from './figures.ts';
import { buyList, cutList, type Item, installSheet, type TextItem, textClashes, workOrder } from './index.ts';
import { apart } from './install/dimensionLines.ts';
import { inputFor } from './testing/jobs.ts';
import { testMetrics } from './testing/metrics.ts';

const demo = JSON.parse(
  readFileSync(new URL('../../../demo/camper.job.json', import.meta.url), 'utf8'),
) as Job;
const input = inputFor(demo);
const textsOf = (items: readonly Item[]): readonly TextItem[] =>
  items.flatMap((item) => (item.kind === 'text' ? [item] : item.kind === 'group' ? textsOf(item.items) : []));

test('every hold point’s distances from the two heavy edges stand on the view’s dimension lines', () => {
  const pages = installSheet(input).pages;
  for (const opening of input.plan.openings) {
    const pattern = input.plan.patterns.find(({ members }) =>
      members.some((one) => one.opening === opening.opening),
    )!;
    const member = pattern.members.find((one) => one.opening === opening.opening)!;
    const points = input.plan.hold.find((one) => one.pattern === pattern.pattern)!.points;
    const page = pages.find(({ items }) =>
      textsOf(items).some(({ text, size }) => text === opening.name && size > 8),
    )!;
    const figures = textsOf(page.items).filter(
      ({ size }) => Math.abs(size * testMetrics.capital - 2.2) < 1e-6,
    );
    // Oracle: distance of a point from a line, by the cross product, of the corners of the survey's own shape.
    const [a, b, , d] = opening.shape!.corners.map(({ at }) => at);
    const from = (p: { x: number; y: number }, u: typeof a, v: typeof a) =>
      Math.abs((v!.x - u!.x) * (p.y - u!.y) - (v!.y - u!.y) * (p.x - u!.x)) /
      Math.hypot(v!.x - u!.x, v!.y - u!.y);
    const upright = figures.filter(({ turn }) => turn === 0).map(({ text }) => text);
    for (const { centre } of points)
      expect(upright).toContain(
        bareLengthText(from(movePoint(member.place, centre), a, b), input.options.units),
      );
    if (opening.name === 'Left quarter' || opening.name === 'Right quarter') continue;
    const turned = figures.filter(({ turn }) => turn !== 0).map(({ text }) => text);
    for (const { centre } of points)
      expect(turned).toContain(
        bareLengthText(from(movePoint(member.place, centre), a, d), input.options.units),
      );
  }
});

test('figures of a dimension line keep their order and their distance, and stay where they can', () => {
  fc.assert(
    fc.property(
      fc.array(fc.double({ min: 0, max: 60, noNaN: true }), { minLength: 1, maxLength: 12 }),
      (raw) => {
        const wanted = raw.toSorted((a, b) => a - b);
        const places = apart(wanted);
        expect(places.length).toBe(wanted.length);
        for (let i = 1; i < places.length; i++)
          expect(places[i]! - places[i - 1]!).toBeGreaterThanOrEqual(4 - 1e-6);
        const mean = (all: readonly number[]) => all.reduce((sum, one) => sum + one, 0) / all.length;
        expect(mean(places)).toBeCloseTo(mean(wanted), 6);
      },
    ),
  );
  expect(apart([0, 10, 20])).toEqual([0, 10, 20]);
});

test('a panel’s layers are named from the outside in, with this panel’s own materials', () => {
  const words = textsOf(workOrder(input).pages.flatMap(({ items }) => items))
    .map(({ text }) => text)
    .join(' ');
  const panel = input.plan.panels[0]!;
  const fabric = input.catalogue.fabrics.find(({ id }) => id === panel.choices.fabric)!.name;
  const points = input.plan.hold[0]!.points.length;
  const order = [
    'Binding: ',
    `Cloth, outside face up: ${fabric}`,
    `${points} magnets, ${panel.choices.hold.poleOut === 'north' ? 'N' : 'S'} face`,
    `${points} pocket patches: `,
    'Inside the glass',
  ];
  const from = words.indexOf('The layers, from the outside in');
  const places = order.map((one) => words.slice(from).indexOf(one));
  expect(Math.min(...places)).toBeGreaterThan(0);
  // Layers are drawn from the inside out, so that the outer ones cover: their words come in that order.
  expect(places).toEqual(places.toSorted((a, b) => b - a));
});

test('each panel has checks with what it should be and by how much it may differ', () => {
  const words = textsOf(workOrder(input).pages.flatMap(({ items }) => items)).map(({ text }) => text);
  expect(words.filter((one) => one === 'Checks of each finished panel').length).toBe(
    input.plan.panels.length,
  );
  for (const { finishedWidth } of input.plan.panels)
    expect(words).toContain(lengthText(finishedWidth.value, input.options.units));
  expect(words).toContain(`± ${fineLengthText(2, input.options.units)}`);
});

test('large type is a third larger, and still touches nothing', () => {
  for (const units of ['mm', 'in'] as const)
    for (const make of [workOrder, installSheet, cutList, buyList]) {
      const usual = make(input)!;
      const large = make({ ...input, options: { ...input.options, type: 'large', units } })!;
      expect({ sheet: large.path, clashes: textClashes(large, testMetrics) }).toEqual({
        sheet: large.path,
        clashes: [],
      });
      const least = (sheet: typeof usual) =>
        Math.min(
          ...sheet.pages.flatMap(({ items }) => textsOf(items)).map(({ size }) => size * testMetrics.capital),
        );
      expect(least(large)).toBeGreaterThan(1.3 * 1.999);
      expect([large.pages[0]!.width, large.pages[0]!.height]).toEqual(
        [210, 297].map((one) => expect.closeTo(one, 6)),
      );
    }
});

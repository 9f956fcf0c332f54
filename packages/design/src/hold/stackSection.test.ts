import { defaultCatalogue, deriveShapes, stackSection, standOffAt } from '@panewright/design';
import { describe, expect, test } from 'vitest';
import { demoJob } from '../testing/jobs.ts';

const magnet = defaultCatalogue.magnets.find(({ id }) => id === 'disc-20x5')!;
const fabric = { thickness: 0.6 };
const tape = { thickness: 1 };
const wrapFilm = { thickness: 0.5 };
const section = (standOff: number, place: 'corner' | 'edge', curved = false) =>
  stackSection(
    {
      fabric,
      tape,
      wrapFilm,
      outside: magnet,
      inside: magnet,
      glazing: { layers: [{ kind: 'glass', thickness: 4 }], standOff, curved },
      depth: 38,
      pocketDepth: 76,
    },
    place,
  );

describe('a section at a hold point', () => {
  // By hand: 0.6 cloth, 4 glass, 1 tape, 0.5 film lie between; 0.6 patch and two magnets of 5 lie without.
  test('layers follow one another from the outside in, and what lies between is the gap', () => {
    const { layers, gap, total } = section(0, 'edge');
    expect(gap).toBeCloseTo(6.1, 12);
    expect(total).toBeCloseTo(16.7, 12);
    expect(layers.map(({ kind }) => kind)).toEqual([
      'pocketCloth',
      'outsideMagnet',
      'fabric',
      'glass',
      'tape',
      'wrapFilm',
      'insideMagnet',
    ]);
    for (let k = 1; k < layers.length; k++) expect(layers[k]!.from).toBe(layers[k - 1]!.to);
    const [outer, inner] = ['outsideMagnet', 'insideMagnet'].map(
      (name) => layers.find(({ kind }) => kind === name)!,
    );
    expect(inner!.from - outer!.to).toBeCloseTo(gap, 12);
    expect(outer!.width).toBe(20);
  });

  test('on a gasket of 3 mm the corner stays up, mid-edge has fallen half way, and both say how sure', () => {
    const [corner, edge] = [section(3, 'corner'), section(3, 'edge')];
    expect(corner.gap).toBeCloseTo(9.1, 12);
    expect(edge.gap).toBeCloseTo(7.6, 12);
    expect([edge.gapLow, edge.gapHigh].map((one) => Number(one.toFixed(9)))).toEqual([6.1, 9.1]);
    expect(corner.gapHigh).toBeCloseTo(9.1, 12);
    expect(standOffAt('edge', 3, 80, 76).value).toBe(0);
  });

  test('curved glass is flagged', () => {
    expect(section(0, 'edge', true).curved).toBe(true);
  });

  test('at a corner the gap is the one the plan of the demonstration counts on', () => {
    const plan = deriveShapes(demoJob(), defaultCatalogue);
    const look = <T extends { readonly id: string }>(list: readonly T[], id: string) =>
      list.find((one) => one.id === id)!;
    for (const hold of plan.hold)
      for (const one of hold.openings) {
        const { choices, glazing } = plan.openings.find(({ opening }) => opening === one.opening)!;
        const { gap } = stackSection(
          {
            fabric: look(defaultCatalogue.fabrics, choices.fabric),
            tape: look(defaultCatalogue.tapes, choices.tape),
            wrapFilm: look(defaultCatalogue.wrapFilms, choices.wrapFilm),
            outside: magnet,
            inside: magnet,
            glazing,
            depth: 38,
            pocketDepth: 76,
          },
          'corner',
        );
        expect(gap).toBeCloseTo(one.gap.value, 9);
      }
  });
});

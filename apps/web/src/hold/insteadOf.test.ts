import { callOperation, defaultCatalogue, demoJob, type OperationOutput } from '@panewright/contract';
import { expect, test } from 'vitest';
import { insteadOf } from './insteadOf.ts';

/** As offered for the demonstration's double pane. */
const offered = {
  code: 'BLOCKS',
  magnet: {
    id: 'block-40x20x5',
    name: '40 × 20 × 5 mm',
    supplier: '',
    shape: { kind: 'block', width: 40, height: 20, thickness: 5 },
    grade: 'N45SH',
    pack: { quantity: 1, price: 0 },
  },
  pocket: 57.15,
} as const;

// The plan counts what neighbours take from one another after the points are laid out, so it may stand a little under what is
// asked: it then says so itself.
test('blocks that were offered hold the double pane, or all but, once the catalogue has them and the job uses them', async () => {
  const { pocket } = demoJob.choices.hold;
  expect(insteadOf(offered, defaultCatalogue, pocket)).toBeNull();
  const own = { ...offered.magnet, id: 'of-the-shop' };
  const catalogue = { ...defaultCatalogue, magnets: [...defaultCatalogue.magnets, own] };
  const { holding } = insteadOf(offered, catalogue, pocket)!;
  expect(holding).toMatchObject({ outside: 'of-the-shop', inside: 'of-the-shop', points: 'margin' });
  expect(holding.pocket ?? pocket).toBeGreaterThanOrEqual(offered.pocket);
  const [before, after] = [{}, holding].map((hold) => ({
    ...demoJob,
    openings: demoJob.openings
      .filter(({ id }) => id === 'W9')
      .map((one) => ({ ...one, choices: { ...one.choices, hold } })),
  }));
  const marginOf = async (job: object) => {
    const found = await callOperation('holdPoints', { job, catalogue });
    if (!found.ok) throw new Error(found.refusal.code);
    return (found.value as OperationOutput<'holdPoints'>).openings[0]!;
  };
  expect((await marginOf(before!)).margin!.low).toBeLessThan(1);
  const { margin, asked } = await marginOf(after!);
  expect(margin!.low).toBeGreaterThan(0.95 * asked);
});

test('a fastener of the catalogue is one change; what the job cannot say is none', () => {
  const fastener = { id: 'a', name: 'A' } as unknown as NonNullable<
    typeof defaultCatalogue.fasteners
  >[number];
  const catalogue = { ...defaultCatalogue, fasteners: [fastener] };
  const change = insteadOf({ code: 'OTHER_FASTENER', fastener: 'a' }, catalogue, 50);
  expect(change).toEqual({ name: 'A', holding: { by: { kind: 'fastener', fastener: 'a' } } });
  expect(insteadOf({ code: 'OTHER_FASTENER', fastener: 'gone' }, catalogue, 50)).toBeNull();
  expect(insteadOf({ code: 'STEEL_ON_FRAME', outside: 'disc-20x5' }, catalogue, 50)).toBeNull();
});

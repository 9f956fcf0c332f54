import { benchmarkInstance } from '@panewright/packing';
import { z } from 'zod';
import { forEvaluations, packInstance, pack as packPieces, packReport } from '../packing.ts';
import { computation } from './operation.ts';

export const pack = computation({
  summary: 'Lays pieces on a strip of fixed width, as short as the search finds.',
  input: z.strictObject({
    instance: packInstance,
    seed: z.optional(z.int().min(0).max(0xffffffff)),
    evaluations: z
      .int()
      .min(0)
      .max(400_000_000)
      .describe('how long to search: some two million take a second'),
  }),
  output: packReport,
  example: {
    instance: {
      name: 'four triangles',
      stripWidth: 10,
      pieces: [
        {
          id: 0,
          demand: 4,
          allowedRotationsDeg: [0, 180],
          polygon: [
            [0, 0],
            [10, 0],
            [0, 10],
          ],
        },
      ],
    },
    seed: 1,
    evaluations: 100_000,
  },
  run: ({ instance, seed, evaluations }) =>
    packPieces(
      { name: instance.name, instance: benchmarkInstance(instance) },
      seed ?? 1,
      forEvaluations(evaluations),
    ),
});

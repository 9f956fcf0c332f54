import { type Magnet, type MagnetPair, pairForce } from '@panewright/magnets';
import { mm, ok, refuse, tesla } from '@panewright/quantity';
import { z } from 'zod';
import { computation } from './operation.ts';

const size = z.number().positive().max(1e6);
const three = z.tuple([size, size, size]);
const shape = z.union([
  z.strictObject({ diameter_mm: size, thickness_mm: size }),
  z.strictObject({ length_x_mm: size, length_y_mm: size, thickness_mm: size }),
  three.describe('sides of a block along x, y and the magnetisation, in `unit`'),
]);

/**
 * One pair of magnets, both magnetised along +z, b above a. Sizes in mm unless `unit` says m. Where b is, is told by
 * the gap and the offset in the plane, or by the offset of the centres.
 */
const pullCase = z.looseObject({
  id: z.string().max(80),
  kind: z.enum(['disc', 'block', 'mixed']).optional(),
  unit: z.enum(['mm', 'm']).optional(),
  a: shape,
  b: shape,
  BrA_T: z.number(),
  BrB_T: z.number(),
  gap_mm: z.number().optional(),
  offset_mm: z.tuple([z.number(), z.number()]).optional(),
  centre_offset_m: z.tuple([z.number(), z.number(), z.number()]).optional(),
  centre_offset_mm: z.tuple([z.number(), z.number(), z.number()]).optional(),
});
type PullCase = z.output<typeof pullCase>;

function magnetOf(given: PullCase['a'], scale: number): Magnet {
  if ('diameter_mm' in given)
    return { kind: 'disc', diameter: mm(given.diameter_mm), thickness: mm(given.thickness_mm) };
  if ('length_x_mm' in given)
    return {
      kind: 'block',
      width: mm(given.length_x_mm),
      height: mm(given.length_y_mm),
      thickness: mm(given.thickness_mm),
    };
  const [width, height, thickness] = given;
  return {
    kind: 'block',
    width: mm(width * scale),
    height: mm(height * scale),
    thickness: mm(thickness * scale),
  };
}

/** Centre of b from that of a, mm; undefined where the case does not say. */
function centreOf(one: PullCase, a: Magnet, b: Magnet): readonly [number, number, number] | undefined {
  if (one.centre_offset_mm) return one.centre_offset_mm;
  const metres = one.centre_offset_m;
  if (metres) return [metres[0] * 1000, metres[1] * 1000, metres[2] * 1000];
  if (one.gap_mm === undefined) return undefined;
  const [x, y] = one.offset_mm ?? [0, 0];
  return [x, y, one.gap_mm + (a.thickness + b.thickness) / 2];
}

/** `b below a` is the same pair turned over: its force along z changes sign. */
function pairOf(one: PullCase): { readonly pair: MagnetPair; readonly up: 1 | -1 } | undefined {
  const scale = one.unit === 'm' ? 1000 : 1;
  const a = magnetOf(one.a, scale);
  const b = magnetOf(one.b, scale);
  const centre = centreOf(one, a, b);
  if (!centre) return undefined;
  const [dx, dy, dz] = centre;
  const gap =
    one.gap_mm !== undefined && dz > 0 ? one.gap_mm : Math.abs(dz) - (a.thickness + b.thickness) / 2;
  const offset = { dx: mm(dx), dy: mm(dy) };
  const remanence = { remanenceA: tesla(one.BrA_T), remanenceB: tesla(one.BrB_T) };
  return { pair: { a, b, ...remanence, gap: mm(gap), offset }, up: dz < 0 ? -1 : 1 };
}

export const pull = computation({
  summary: 'Force on the second magnet of each pair, newtons: ideal magnets, nothing corrected.',
  input: z.strictObject({ cases: z.array(pullCase).max(10_000) }),
  output: z.strictObject({
    forces: z.array(
      z.strictObject({ id: z.string(), force_N: z.tuple([z.number(), z.number(), z.number()]) }),
    ),
  }),
  example: {
    cases: [
      {
        id: 'two discs',
        a: { diameter_mm: 20, thickness_mm: 5 },
        b: { diameter_mm: 20, thickness_mm: 5 },
        BrA_T: 1.3,
        BrB_T: 1.3,
        gap_mm: 6,
      },
    ],
  },
  run: ({ cases }) => {
    const forces: { id: string; force_N: [number, number, number] }[] = [];
    for (const one of cases) {
      const found = pairOf(one);
      if (!found) return refuse({ code: 'PULL_PLACE_MISSING', id: one.id });
      const force = pairForce(found.pair);
      if (!force.ok) return refuse({ code: 'PULL_REFUSED', id: one.id, refusal: force.refusal });
      const { x, y, z: along } = force.value;
      forces.push({ id: one.id, force_N: [x, y, found.up * along] });
    }
    return ok({ forces });
  },
});

import type { Polygon } from '@panewright/packing';
import { mm } from '@panewright/quantity';
import fc from 'fast-check';

/** Star-shaped about its centre, so simple; often not convex; of 3 corners and as many as given, at most 20 from the centre. */
export const star = (most: number) =>
  fc.array(fc.double({ min: 0.25, max: 1, noNaN: true }), { minLength: 3, maxLength: most }).map(
    (radii): Polygon =>
      radii.map((r, k) => {
        const a = (2 * Math.PI * k) / radii.length;
        return [mm(20 * r * Math.cos(a)), mm(20 * r * Math.sin(a))] as const;
      }),
  );

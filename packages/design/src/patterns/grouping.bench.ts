import { defaultCatalogue, deriveShapes, patternPlans } from '../index.ts';
import { jobOf, rectangle } from '../testing/jobs.ts';

/** Windows of distinct sizes, in steps of `step` in: far from each other, or each a near miss of the one before. Invented. */
const sizes = (count: number, step: number) =>
  Array.from({ length: count }, (_, k) =>
    rectangle(`W${k + 1}`, 19 + step * (k % 50), 12.5 + Math.floor(k / 50), 2.25),
  );

const far = deriveShapes(jobOf(sizes(200, 0.6)), defaultCatalogue).openings;
const near = deriveShapes(jobOf(sizes(40, 0.47)), defaultCatalogue).openings;
/** What is kept of an outline lives as long as the outline: a copy begins anew. */
const grouped = (openings: typeof far) => patternPlans(structuredClone(openings), defaultCatalogue, () => {});

export const benches: { name: string; run: () => unknown }[] = [
  { name: 'group 200 openings of 200 sizes', run: () => grouped(far) },
  { name: 'group 40 openings, all but one a near miss of another', run: () => grouped(near) },
];

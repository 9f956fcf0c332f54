import type { PhotoReading, PhotoSetup } from '@panewright/design';
import type { Ruler, Tape } from '@panewright/photo';
import { parseLength } from '@panewright/quantity';

/** What was taped and ruled, in millimetres, as the tracer takes it. */
export interface PhotoReadings {
  readonly tapes: readonly Tape[];
  readonly ruler?: Ruler;
}

/**
 * Standard deviations of one reading, mm: a steel tape and a rule read to half a millimetre, and read to 1/16 and 1/32 in.
 * A reading rounded to a step adds step / √12 to the 0.4 mm and 0.1 mm of laying it on. Common practice, no source.
 */
const TAPE = { mm: 0.5, in: 0.6 } as const;
const RULE = { mm: 0.15, in: 0.25 } as const;

/** The readings of a setup that were read; a tape not read yet is left out, and so is a bar ruled alone. */
export function photoReadings({ tapes, ruled }: PhotoSetup): PhotoReadings {
  const [x, y] = [lengthOf(ruled.x), lengthOf(ruled.y)];
  const sigma = (one: PhotoReading | undefined) => one?.sigma ?? RULE[one?.unit ?? 'mm'];
  return {
    tapes: tapes.flatMap(({ from, to, read }) => {
      const length = lengthOf(read);
      return length === undefined || !read
        ? []
        : [{ from, to, length, sigma: read.sigma ?? TAPE[read.unit] }];
    }),
    ...(x === undefined || y === undefined
      ? {}
      : { ruler: { x, y, sigma: Math.max(sigma(ruled.x), sigma(ruled.y)) } }),
  };
}

function lengthOf(read: PhotoReading | undefined): number | undefined {
  if (!read) return undefined;
  const length = parseLength(read.entered, read.unit);
  return length.ok ? length.value : undefined;
}

import { readFileSync } from 'node:fs';
import {
  type Choices,
  defaultChoices,
  defaultGlazing,
  emptyJob,
  type Job,
  job,
  type Opening,
} from '@panewright/design';

/** The demonstration job, parsed. */
export const demoJob = (): Job =>
  job.parse(JSON.parse(readFileSync(new URL('../../../../demo/camper.job.json', import.meta.url), 'utf8')));

/** A rectangular opening read in inches, corners of one radius. */
export function rectangle(
  id: string,
  width: number,
  height: number,
  radius: number,
  more: Partial<Opening> = {},
): Opening {
  const diagonal = Math.hypot(width, height).toFixed(3);
  const read = (of: Opening['survey']['readings'][number]['of'], value: string | number) => ({
    of,
    entered: String(value),
    unit: 'in' as const,
  });
  return {
    id,
    name: id,
    place: '',
    survey: {
      method: 'tape',
      diagonalsTo: 'sharp',
      readings: [
        read('bottom', width),
        read('right', height),
        read('top', width),
        read('left', height),
        read('rising', diagonal),
        read('falling', diagonal),
        read('radiusBottomLeft', radius),
        read('radiusBottomRight', radius),
        read('radiusTopRight', radius),
        read('radiusTopLeft', radius),
      ],
    },
    glazing: defaultGlazing,
    exit: false,
    driving: false,
    obstructions: [],
    choices: {},
    notes: '',
    ...more,
  };
}

export const jobOf = (openings: readonly Opening[], choices: Partial<Choices> = {}): Job => ({
  ...emptyJob('test', 'Test job', 'in'),
  choices: { ...defaultChoices, ...choices },
  openings: [...openings],
});

import { readFileSync } from 'node:fs';
import {
  type Choices,
  defaultChoices,
  defaultGlazing,
  emptyJob,
  type Job,
  job,
  type Opening,
  type ReadingName,
  type TapeSurvey,
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
  more: Partial<Omit<Opening, 'survey'>> = {},
): Opening & { survey: TapeSurvey } {
  const diagonal = Math.hypot(width, height).toFixed(3);
  const read = (of: ReadingName, value: string | number) => ({
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

/** An opening whose outline was accepted as it is: segments as [x, y] or [x, y, bulge], each known to 0.4 mm. */
export const accepted = (id: string, ...segments: readonly (readonly number[])[]): Opening => ({
  ...rectangle(id, 10, 10, 0),
  survey: {
    method: 'outline',
    segments: segments.map(([x, y, bulge]) => {
      const to = { x: x!, y: y! };
      return bulge === undefined
        ? { kind: 'line', to, sigma: 0.4 }
        : { kind: 'arc', to, bulge, sigma: 0.4, radiusSigma: 1 };
    }),
    from: { kind: 'file', name: `${id}.dxf`, date: '2026-11-25', note: '' },
  },
});

/** Invented outlines that are no rectangles; areas by elementary geometry. */
export const oddOpenings = {
  /** 800 × 600 less 300 × 250 at the top right; its corners sharp. Placed away from the origin. */
  ell: accepted('L', [1100, 50], [1100, 400], [800, 400], [800, 650], [300, 650], [300, 50]),
  ellArea: 800 * 600 - 300 * 250,
  /** Radius 250. */
  round: accepted('O', [250, 0, 1], [-250, 0, 1]),
  roundArea: Math.PI * 250 ** 2,
  /** 900 × 500 whose top is an S: one half bows in as far as the other bows out. */
  ess: accepted('S', [900, 0], [900, 500], [450, 500, 0.2], [0, 500, -0.2], [0, 0]),
  essArea: 900 * 500,
};

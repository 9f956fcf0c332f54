import {
  type Catalogue,
  defaultCatalogue,
  defaultGlazing,
  derive,
  emptyJob,
  type Job,
  type Opening,
  type ReadingName,
  type TapeSurvey,
} from '@panewright/design';
import type { SheetInput, SheetOptions } from '../options.ts';
import { testMetrics } from './metrics.ts';

/** An opening measured square, in millimetres, all its corners alike. Invented. */
export function squareOpening(
  id: string,
  width: number,
  height: number,
  radius: number,
  more: Partial<Omit<Opening, 'survey'>> = {},
): Opening & { survey: TapeSurvey } {
  const read = (of: ReadingName, value: number) => ({
    of,
    entered: String(value),
    unit: 'mm' as const,
  });
  const diagonal = Math.round(Math.hypot(width, height) * 100) / 100;
  return {
    id,
    name: `Window ${id}`,
    place: 'left side',
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

/** Three openings: two alike, a larger one that is an exit, hemmed, in cloth whose faces differ. Invented. */
export function smallJob(): Job {
  return {
    ...emptyJob('small', 'Three windows', 'mm'),
    openings: [
      squareOpening('A', 600, 400, 60),
      squareOpening('B', 600, 400, 60, { name: 'Galley' }),
      squareOpening('C', 1320, 610, 75, {
        exit: true,
        driving: true,
        choices: { fabric: 'mesh-sand', grain: 'warpUp', finish: { kind: 'hotCut' } },
        obstructions: [{ id: 'h', name: 'handle', x: 640, y: 500, width: 60, height: 30 }],
      }),
    ],
  };
}

export function inputFor(
  job: Job,
  catalogue: Catalogue = defaultCatalogue,
  options: Partial<SheetOptions> = {},
): SheetInput {
  return {
    plan: derive(job, catalogue, 1),
    job,
    catalogue,
    options: {
      ...{ paper: 'a4', units: job.units, date: '2026-11-25', revision: '1', metrics: testMetrics },
      say: ({ code, where, numbers }) =>
        `${code} ${Object.values(where).join(' ')} ${JSON.stringify(numbers)}`,
      ...options,
    },
  };
}

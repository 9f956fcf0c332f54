import type { Job } from '../document/job.ts';
import type { Find } from '../plan/finding.ts';
import type { CutPiece } from '../plan/plan.ts';
import type { PocketsOf } from './cutPieces.ts';

/** What comes from one piece of cloth: panels by their openings, each with its pockets. */
export interface Together {
  readonly groups: readonly (readonly string[])[];
  readonly pockets: PocketsOf;
}

/** The groups of one cloth; null where nothing is to be kept together. */
export function togetherOf(
  { oneBatch, openings }: Pick<Job, 'oneBatch' | 'openings'>,
  pieces: readonly CutPiece[],
  pockets: PocketsOf,
): Together | null {
  if (!oneBatch) return null;
  const groups = new Map<string, string[]>();
  for (const opening of pieces.flatMap((piece) => piece.openings)) {
    const place = placeOf(openings, opening);
    const key =
      oneBatch === 'job' ? '' : oneBatch === 'place' && place !== '' ? `at ${place}` : `alone ${opening}`;
    groups.set(key, [...(groups.get(key) ?? []), opening]);
  }
  return { groups: [...groups.values()], pockets };
}

const placeOf = (openings: Job['openings'], id: string): string =>
  openings.find((one) => one.id === id)?.place.trim() ?? '';

/** Says of which places the panels are of several cloths: those of each cloth are kept together, and no more can be. */
export function placesOfSeveralCloths(
  { oneBatch, openings }: Pick<Job, 'oneBatch' | 'openings'>,
  pieces: readonly CutPiece[],
  nameOf: (fabric: string) => string,
  find: Find,
): void {
  if (oneBatch !== 'place') return;
  const places = new Set(openings.map(({ place }) => place.trim()).filter((place) => place !== ''));
  for (const place of places) {
    const here = pieces.flatMap(({ fabric, openings: of }) =>
      of.filter((one) => placeOf(openings, one) === place).map((opening) => ({ opening, fabric })),
    );
    const fabrics = [...new Set(here.map(({ fabric }) => fabric))];
    if (fabrics.length < 2) continue;
    const numbers = {
      ...{ place, openings: here.map(({ opening }) => opening).join(' ') },
      fabrics: fabrics.map(nameOf).join(', '),
    };
    find({ severity: 'note', code: 'KEPT_TOGETHER_CLOTHS', where: {}, numbers });
  }
}

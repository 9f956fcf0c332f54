import type { Draft } from 'immer';
import type { Elevation, Job } from '../contract.ts';
import { freeId } from '../openings/newOpening.ts';

type SiteKind = Job['site']['kind'];

/** What a new side is before the maker says otherwise. Invented sizes, in mm: only to have something to place on. */
const FIRST: Readonly<Record<SiteKind, Pick<Elevation, 'width' | 'height' | 'parts'>>> = {
  camper: {
    width: 6000,
    height: 2600,
    parts: [
      { kind: 'round', x: 700, y: -350, width: 700, height: 700 },
      { kind: 'round', x: 4500, y: -350, width: 700, height: 700 },
    ],
  },
  boat: { width: 9000, height: 2200, parts: [] },
  house: { width: 8000, height: 5000, parts: [{ kind: 'box', x: 3500, y: 0, width: 1000, height: 2100 }] },
  other: { width: 4000, height: 2500, parts: [] },
};

export const elevationIn = (draft: Draft<Job>, id: string): Draft<Elevation> =>
  draft.elevations!.find((one) => one.id === id)!;

/** Adds a side; answers with its id. */
export function addElevation(draft: Draft<Job>, name: (n: number) => string): string {
  draft.elevations ??= [];
  const id = freeId('S', draft.elevations);
  const first = structuredClone(FIRST[draft.site.kind]) as Draft<
    Pick<Elevation, 'width' | 'height' | 'parts'>
  >;
  draft.elevations.push({ id, name: name(draft.elevations.length + 1), ...first, places: [] });
  return id;
}

/** Puts an opening on a side, and off any other it stood on. */
export function placeOpening(draft: Draft<Job>, side: string, opening: string, x: number, y: number): void {
  for (const one of draft.elevations ?? []) {
    const at = one.places.findIndex((place) => place.opening === opening);
    if (one.id === side && at >= 0) Object.assign(one.places[at]!, { x, y });
    else if (one.id === side) one.places.push({ opening, x, y });
    else if (at >= 0) one.places.splice(at, 1);
  }
}

export function takeOff(draft: Draft<Job>, side: string, opening: string): void {
  const one = elevationIn(draft, side);
  one.places = one.places.filter((place) => place.opening !== opening);
}

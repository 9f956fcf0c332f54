import type { Catalogue } from '../contract.ts';
import type { Holding } from '../panels/scope.ts';
import type { MagnetRanking } from './useMagnetChoices.ts';

type Answer = Pick<
  MagnetRanking['instead'][number],
  'code' | 'outside' | 'inside' | 'magnet' | 'fastener' | 'pocket'
>;

/** A change of the job, and what it is called. */
export interface Instead {
  readonly name: string;
  readonly holding: Holding;
}

/**
 * The change of the job that makes what was offered hold, or null where the catalogue has no such item. Steel on the frame
 * beside the glass is none: the strip of a job stands behind the glass.
 *
 * @param pocket the one the panel has: a wider one is set where the offer needs it, never a smaller
 */
export function insteadOf(answer: Answer, catalogue: Catalogue, pocket: number): Instead | null {
  const { fastener, pocket: needed = 0 } = answer;
  if (fastener !== undefined) {
    const listed = catalogue.fasteners?.find(({ id }) => id === fastener);
    return listed ? { name: listed.name, holding: { by: { kind: 'fastener', fastener } } } : null;
  }
  const [outside, inside] = pairOf(answer, catalogue);
  if (!outside || !inside) return null;
  return {
    name: outside === inside ? outside.name : `${outside.name}, ${inside.name}`,
    holding: {
      by: { kind: 'magnets' },
      outside: outside.id,
      inside: inside.id,
      points: 'margin',
      ...(needed > pocket ? { pocket: needed } : {}),
    },
  };
}

type Magnet = Catalogue['magnets'][number];

/** The catalogue's own magnets of the ids, or of the shape and grade, that were offered. */
function pairOf({ code, outside, inside, magnet }: Answer, { magnets }: Catalogue): (Magnet | undefined)[] {
  if (code === 'CATALOGUE_PAIR')
    return [outside, inside].map((wanted) => magnets.find(({ id }) => id === wanted));
  const same = magnets.find((one) => magnet && one.grade === magnet.grade && sameShape(one, magnet));
  return [same, same];
}

const sameShape = ({ shape: a }: Magnet, { shape: b }: Pick<Magnet, 'shape'>): boolean =>
  JSON.stringify(Object.entries(a).sort()) === JSON.stringify(Object.entries(b).sort());

import { derive, type PlanTold } from '../derive.ts';
import type { Catalogue } from '../document/catalogue.ts';
import type { Job, Offer } from '../document/job.ts';
import type { PricePlan } from '../plan/plan.ts';

/** An alternative with what the whole job would then cost. */
export interface PricedOffer {
  readonly offer: Offer;
  /** Null where there is no price. */
  readonly price: PricePlan | null;
  /** How many findings say that a part cannot be made so as it stands. */
  readonly stops: number;
}

/** The job with an alternative taken: at every opening, over what it has of its own. */
export const withOffer = (job: Job, { hold, ...rest }: Offer): Job => ({
  ...job,
  openings: job.openings.map((one) => ({
    ...one,
    choices: {
      ...one.choices,
      ...rest,
      ...(hold === undefined ? {} : { hold: { ...one.choices.hold, ...hold } }),
    },
  })),
});

/**
 * The price of the job with an alternative, from a plan of its own: its patterns, hold points, lay and minutes are those it
 * would have.
 */
export function priceOffer(
  job: Job,
  catalogue: Catalogue,
  offer: Offer,
  seed: number,
  budget?: number,
  told?: PlanTold,
): PricedOffer {
  const { price, findings } = derive(withOffer(job, offer), catalogue, seed, budget, told);
  return { offer, price, stops: findings.filter(({ severity }) => severity === 'stop').length };
}

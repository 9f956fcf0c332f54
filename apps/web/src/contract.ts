import type { Catalogue } from '@panewright/contract';

// What the page takes from the contract; nothing else is imported from outside of it.
export * from '@panewright/contract';

/** The seed of the lay's search. One for all, so that a job has the same lay on every page and sheet. */
export const PLAN_SEED = 1;

export type MoneySign = Catalogue['currency'];

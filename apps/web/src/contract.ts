import { type Catalogue, type LengthRefusal, sayLengthRefusal } from '@panewright/contract';

// What the page takes from the contract; nothing else is imported from outside of it.
export * from '@panewright/contract';

/** The seed of the lay's search. One for all, so that a job has the same lay on every page and sheet. */
export const PLAN_SEED = 1;

export type MoneySign = Catalogue['currency'];

/** Why a text is not a length, as a sentence. */
export function sayLength(refusal: LengthRefusal): string {
  const text =
    refusal.text.trim() === '' ? 'Nothing is entered' : `“${refusal.text.slice(0, 40)}” is not a length`;
  return `${text}: ${sayLengthRefusal(refusal)}.`;
}

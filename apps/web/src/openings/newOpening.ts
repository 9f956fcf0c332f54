import { defaultGlazing, type Opening } from '../contract.ts';

/** The first of W1, W2, … that the job has not. */
export function freeId(prefix: string, taken: readonly { readonly id: string }[]): string {
  const ids = new Set(taken.map(({ id }) => id));
  let n = 1;
  while (ids.has(`${prefix}${n}`)) n += 1;
  return `${prefix}${n}`;
}

export const newOpening = (id: string, name: string): Opening => ({
  id,
  name,
  place: '',
  survey: { method: 'tape', diagonalsTo: 'sharp', readings: [] },
  glazing: structuredClone(defaultGlazing) as Opening['glazing'],
  exit: false,
  driving: false,
  obstructions: [],
  choices: {},
  notes: '',
});

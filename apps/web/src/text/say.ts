import { inOne, makeShow, type Refusal, sayRefusal, type UnitName } from '../contract.ts';
import { spoken } from './useWords.ts';

/** A refusal as running text, in the language of the page. */
export function sayRefused(refusal: Refusal, units: UnitName): string {
  const { language, messages } = spoken();
  return inOne(sayRefusal(refusal, makeShow({ units, language }), messages));
}

import type { Draft } from 'immer';
import {
  type Job,
  type Opening,
  parseLength,
  type Reading,
  type ReadingName,
  type UnitName,
} from '../contract.ts';
import { tapeIn } from '../survey/surveyOf.ts';
import { asKept } from '../text/decimals.ts';

export const openingIn = (draft: Draft<Job>, id: string): Draft<Opening> =>
  draft.openings.find((one) => one.id === id)!;

/** Positions in the survey's list of the readings of one kind, in the order taken. */
export const readingsOf = (opening: Opening, of: ReadingName): readonly number[] =>
  tapeIn(opening).readings.flatMap((reading, index) => (reading.of === of ? [index] : []));

/** Sets the nth reading of a kind, takes it out where nothing is left of it, or adds it. */
export function setReading(
  draft: Draft<Job>,
  opening: string,
  of: ReadingName,
  nth: number,
  text: string,
): void {
  const entered = asKept(text);
  const { readings } = tapeIn(openingIn(draft, opening));
  const index = readings.flatMap((reading, i) => (reading.of === of ? [i] : []))[nth];
  if (entered.trim() === '') {
    if (index !== undefined) readings.splice(index, 1);
  } else if (index !== undefined) {
    readings[index]!.entered = entered;
    readings[index]!.unit = draft.units;
  } else readings.push({ of, entered, unit: draft.units });
}

/** The entry as it was typed, with its unit where the page now shows another and the entry names none itself. */
export function shownReading({ entered, unit }: Pick<Reading, 'entered' | 'unit'>, units: UnitName): string {
  if (unit === units) return entered;
  const [asIn, asMm] = [parseLength(entered, 'in'), parseLength(entered, 'mm')];
  const named = asIn.ok && asMm.ok && asIn.value === asMm.value;
  return named ? entered : `${entered} ${unit}`;
}

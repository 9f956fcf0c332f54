import { joinWords } from '../show.ts';
import type { FindingWords } from '../words.ts';
import { impossibleSurvey } from './impossibleSurvey.ts';
import { partsOf, sayCause, sayPart } from './readings.ts';
import { opening } from './where.ts';

/** What the survey of an opening has to say. */
export const surveyFindings = {
  READING_MISSING: (f, show) => ({
    what: `${opening(f, show)} lacks ${joinWords(partsOf(f.numbers.readings))}.`,
    why: 'Four sides, four radii and a diagonal fix the shape; without one it would be a guess.',
    do: 'Take the reading. A sharp corner has the radius 0.',
  }),
  OUTLINE_MISSING: (f, show) => ({
    what: `${opening(f, show)} has no outline yet.`,
    why: '',
    do:
      f.numbers.from === 'photo'
        ? 'Photograph the traced film, and use the outline it gives.'
        : 'Choose a drawing or a table of points, and use an outline of it.',
  }),
  READING_SUSPECT: (f, show) => {
    const { of, entered, corrected, confidence, cause, orOf, orEntered } = f.numbers;
    const slip = sayCause(cause);
    const or =
      orOf === undefined ? '' : ` It may instead be the ${sayPart(orOf)}, read as ${show.text(orEntered)}.`;
    return {
      what: `${opening(f, show)}: the ${sayPart(of)}, read as ${show.text(entered)}, does not fit the others; ${show.length(corrected)} would.${or}`,
      why: `${slip === '' ? 'No common slip explains it' : `Perhaps ${slip}`} (confidence ${confidence > 0.99 ? 'over 99 %' : show.percent(confidence)}, an estimate).`,
      do: `Measure the ${sayPart(of)} again before cutting.`,
    };
  },
  READINGS_DISAGREE: (f, show) => ({
    what: `${opening(f, show)}: the readings miss closing by ${show.fine(f.numbers.misclosure)}, more than their stated spread explains.`,
    why: 'No single reading stands out as the wrong one.',
    do: 'Measure the diagonals and the longest distances again.',
  }),
  SURVEY_IMPOSSIBLE: (f, show) => ({
    what: `${opening(f, show)}: no such shape exists: ${impossibleSurvey(f, show)}.`,
    why: 'At least one reading is wrong, or is of another part of the opening.',
    do: 'Check the entries against the notes, then measure again.',
  }),
  NO_CHECK_READING: (f, show) => ({
    what: `${opening(f, show)}: nothing checks the readings.`,
    why: 'With just as many readings as the shape needs, a misread one cannot be seen.',
    do: 'Add the other diagonal, or a width at mid height.',
  }),
  OUT_OF_SQUARE: (f, show) => ({
    what: `${opening(f, show)} is out of square: ${show.fine(f.numbers.offset)} at ${sayPart(f.numbers.corner)} (${show.number(f.numbers.degrees, 2)}°).`,
    why: 'The panel follows the opening as it was measured.',
    do: 'Mark top and outside on the panel: it goes on one way only.',
  }),
  NO_CHECK_TAPE: (f, show) => ({
    what: `${opening(f, show)}: nothing checks the tapes.`,
    why: 'With just as many as place the points, a misread one cannot be seen.',
    do: 'Tape from point to point as well, or from a third mark.',
  }),
  WEAK_GEOMETRY: (f, show) => ({
    what: `${opening(f, show)}: the tapes to ${f.numbers.point} meet at ${show.number(f.numbers.degrees, 0)}°; across them it is known to ${show.fine(1.96 * f.numbers.across)} (95 %).`,
    why: 'Tapes that meet at less than 30° place a point well along them and badly across.',
    do: 'Tape to it from a mark that lies more to its side.',
  }),
  NEXT_TAPE: (f, show) => ({
    what: `${opening(f, show)}: one more tape, from ${f.numbers.from} to ${f.numbers.to}, would help most.`,
    why: `The worst-known point is then known to ${show.fine(1.96 * f.numbers.after)} instead of ${show.fine(1.96 * f.numbers.now)} (95 %).`,
    do: 'Take it if the panel has to fit closely.',
  }),
  POINT_OFF_RUN: (f, show) => ({
    what: `${opening(f, show)}: point ${f.numbers.point} lies ${show.fine(f.numbers.off)} off run ${show.number(f.numbers.run, 0)}.`,
    why: 'That is more than the tapes’ spread explains: the run is not of that kind, or the point is another’s.',
    do: 'Look at the window: is that run straight, or one curve?',
  }),
} satisfies Partial<FindingWords>;

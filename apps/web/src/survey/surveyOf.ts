import type { Draft } from 'immer';
import type { MarksSurvey, Opening, Survey, TapeSurvey } from '../contract.ts';

/** The readings of taped sides. To be asked only of an opening that is measured so. */
export function tapeIn<O extends Opening | Draft<Opening>>(
  opening: O,
): Extract<O['survey'], { method: 'tape' }> {
  if (opening.survey.method !== 'tape') throw new Error(`${opening.id} is not measured by its sides`);
  return opening.survey as Extract<O['survey'], { method: 'tape' }>;
}

export function marksIn<O extends Opening | Draft<Opening>>(
  opening: O,
): Extract<O['survey'], { method: 'marks' }> {
  if (opening.survey.method !== 'marks') throw new Error(`${opening.id} is not measured from marks`);
  return opening.survey as Extract<O['survey'], { method: 'marks' }>;
}

export function outlineIn<O extends Opening | Draft<Opening>>(
  opening: O,
): Extract<O['survey'], { method: 'outline' }> {
  if (opening.survey.method !== 'outline') throw new Error(`${opening.id} has no accepted outline`);
  return opening.survey as Extract<O['survey'], { method: 'outline' }>;
}

/** True once anything was measured or accepted. */
export function isMeasured({ survey }: Opening): boolean {
  if (survey.method === 'tape') return survey.readings.length > 0;
  return survey.method === 'marks' ? survey.distances.length > 0 : survey.segments.length > 0;
}

const newTape = (): TapeSurvey => ({ method: 'tape', diagonalsTo: 'sharp', readings: [] });

/** Two marks and four points, nothing taped yet. */
export const newMarks = (): MarksSurvey => ({
  method: 'marks',
  marks: [{ name: 'M1' }, { name: 'M2' }],
  points: ['1', '2', '3', '4'].map((name) => ({ name })),
  distances: [],
  runs: [],
});

/** Ways to measure an opening, as the page offers them: an outline may come from a file or from photos. */
export type SurveyWay = Survey['method'] | 'photo';

export const wayOf = ({ survey }: Opening): SurveyWay =>
  survey.method === 'outline' && survey.from.kind === 'photo' ? 'photo' : survey.method;

export const newSurvey = (way: SurveyWay): Survey => {
  if (way === 'tape') return newTape();
  if (way === 'marks') return newMarks();
  const kind = way === 'photo' ? 'photo' : 'file';
  return { method: 'outline', segments: [], from: { kind, name: '', date: '', note: '' } };
};

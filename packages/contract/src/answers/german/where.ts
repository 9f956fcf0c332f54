import { whereWords } from '../whereWords.ts';

export const { opening, pattern } = whereWords({
  opening: 'Öffnung',
  pattern: 'Schnittmuster',
  job: 'Der Auftrag',
});

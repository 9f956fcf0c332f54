import { whereWords } from '../whereWords.ts';

export const { opening, pattern } = whereWords({ opening: 'Opening', pattern: 'Pattern', job: 'The job' });

import { whereWords } from '../whereWords.ts';

export const { opening, pattern } = whereWords({ opening: 'Hueco', pattern: 'Patrón', job: 'El trabajo' });

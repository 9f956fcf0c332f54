import type { Words } from '../words.ts';

/** Words of finding things and of the keys, in Spanish. */
export const findWords: Words['find'] = {
  find: 'Buscar',
  inJob: 'Buscar en este trabajo',
  label: 'Huecos, patrones, materiales, notas',
  inJobs: 'Buscar un trabajo, un hueco, un material',
  none: 'Aquí nada se llama así.',
  some: (count) => (count === 1 ? '1 hallado' : `${count} hallados`),
  kind: { job: 'Trabajo', opening: 'Hueco', pattern: 'Patrón', material: 'Material', note: 'Nota' },
  inOf: (job) => `en ${job}`,
  keys: 'Teclas',
  keysTitle: 'Qué hacen las teclas',
  key: {
    undo: ['Ctrl+Z', 'Deshacer la última entrada'],
    redo: ['Ctrl+Mayús+Z', 'Hacerla otra vez'],
    find: ['/', 'Buscar en este trabajo'],
    keys: ['?', 'Esta lista'],
    tab: ['Tab', 'A la medida siguiente, en el orden de la vuelta'],
    next: ['Alt+↓', 'El hueco siguiente'],
    previous: ['Alt+↑', 'El hueco anterior'],
    stages: ['Alt+1 … Alt+9', 'Las etapas, desde Trabajo'],
    escape: ['Esc', 'Cerrar lo que está abierto'],
  },
  keysAbout: 'En un Mac, Cmd vale por Ctrl. En un campo, las letras se escriben como siempre.',
};

import type { Words } from '../words.ts';
import { benchWords } from './benchWords.ts';
import { catalogueWords } from './catalogueWords.ts';
import { compareWords } from './compareWords.ts';
import { elevationWords } from './elevationWords.ts';
import { findWords } from './findWords.ts';
import { holdWords } from './holdWords.ts';
import { keepWords } from './keepWords.ts';
import { keptWords } from './keptWords.ts';
import { layWords } from './layWords.ts';
import { offcutWords } from './offcutWords.ts';
import { openingWords } from './openingWords.ts';
import { photoWords } from './photoWords.ts';
import { pictureWords } from './pictureWords.ts';
import { reservedWords } from './reservedWords.ts';
import { printerWords, sheetWords, shopPaperWords } from './sheetWords.ts';
import { stageWords } from './stageWords.ts';
import { surveyWords } from './surveyWords.ts';
import { windowWords } from './windowWords.ts';

/** Every word of the page, in Spanish. */
export const spanish: Words = {
  bench: benchWords,
  elevations: elevationWords,
  keep: keepWords,
  find: findWords,
  window: windowWords,
  survey: surveyWords,
  kept: keptWords,
  photo: photoWords,
  offcut: offcutWords,
  reserved: reservedWords,
  compare: compareWords,
  holding: holdWords,
  lay: layWords,
  sheets: sheetWords,
  printers: printerWords,
  picture: pictureWords,
  shopPapers: shopPaperWords,
  catalogue: catalogueWords,
  openings: openingWords,
  ...stageWords,
  app: {
    name: 'Panewright',
    menu: 'Menú',
    skip: 'Ir al dibujo',
    loading: 'Abriendo …',
    jobs: 'Trabajos',
    catalogue: 'Catálogo',
    theme: { label: 'Claro u oscuro', system: 'Como el sistema', light: 'Claro', dark: 'Oscuro' },
    language: 'Idioma',
    units: { label: 'Longitudes en', in: 'Pulgadas', mm: 'Milímetros' },
    undo: 'Deshacer',
    redo: 'Rehacer',
    close: 'Cerrar',
    remove: 'Quitar',
    add: 'Añadir',
    notFound: 'No existe esa página.',
    toJobs: 'Ir a la lista de trabajos',
    fault: 'Algo falló en el propio programa.',
    faultDo:
      'Lo último guardado está a salvo. Vuelva a cargar la página; si ocurre otra vez, anote lo último que cambió.',
    reload: 'Volver a cargar la página',
    noAnswer: 'El servidor no responde.',
    noAnswerDo:
      '¿Sigue en marcha? Su trabajo está guardado en este navegador y se envía en cuanto el servidor responda.',
    again: 'Intentar otra vez',
  },
  save: {
    saved: (revision) => (revision === 0 ? 'Aún sin cambios' : `Guardado, revisión ${revision}`),
    saving: 'Guardando …',
    waiting: 'Cambiado, aún sin guardar',
    failed: (why) => `Sin guardar: ${why}`,
    conflictShort: 'Cambiado también en otro sitio',
    recovered: 'En este navegador había trabajo que no llegó al servidor; está de nuevo en la página.',
  },
  revisions: {
    title: 'Revisiones',
    about: 'Se conserva cada guardado. Restaurar uno antiguo añade una revisión nueva; no se pierde nada.',
    one: (revision) => `Revisión ${revision}`,
    current: 'en esta página',
    restore: 'Restaurar',
    restoreOf: (revision) => `Restaurar la revisión ${revision}`,
    none: 'Aún no se ha guardado ninguna revisión.',
  },
  jobs: {
    title: 'Trabajos',
    empty:
      'Aún no hay trabajos. Empiece uno y mida una ventana, o abra el ejemplo: una autocaravana inventada con nueve ventanas.',
    newTitle: 'Empezar un trabajo',
    newName: 'Nombre del trabajo',
    newPlaceholder: 'p. ej. Seis ventanas para un barco',
    newUnits: 'Longitudes en',
    start: 'Empezar el trabajo',
    demo: 'Abrir el ejemplo',
    demoAbout: 'Una autocaravana inventada con nueve ventanas. Cambie lo que quiera: es una copia.',
    openings: (count) => (count === 1 ? '1 hueco' : `${count} huecos`),
    changed: (when) => `cambiado ${when}`,
    revision: (revision) => `revisión ${revision}`,
    needName: 'Dé antes un nombre al trabajo.',
  },
};

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

/** Every word of the page, in German: neutral, with infinitives for what a button does. */
export const german: Words = {
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
    menu: 'Menü',
    skip: 'Zur Zeichnung',
    loading: 'Wird geöffnet …',
    jobs: 'Aufträge',
    catalogue: 'Katalog',
    theme: { label: 'Hell oder dunkel', system: 'Wie System', light: 'Hell', dark: 'Dunkel' },
    language: 'Sprache',
    units: { label: 'Längen in', in: 'Zoll', mm: 'Millimeter' },
    undo: 'Rückgängig',
    redo: 'Wiederholen',
    close: 'Schließen',
    remove: 'Entfernen',
    add: 'Hinzufügen',
    notFound: 'Diese Seite gibt es nicht.',
    toJobs: 'Zur Liste der Aufträge',
    fault: 'Im Programm selbst ist etwas schiefgegangen.',
    faultDo:
      'Die zuletzt gespeicherte Arbeit ist sicher. Die Seite neu laden; kommt es wieder vor, notieren, was zuletzt geändert wurde.',
    reload: 'Seite neu laden',
    noAnswer: 'Der Server antwortet nicht.',
    noAnswerDo:
      'Läuft er noch? Die Arbeit ist in diesem Browser aufbewahrt und wird gespeichert, sobald der Server antwortet.',
    again: 'Noch einmal versuchen',
  },
  save: {
    saved: (revision) => (revision === 0 ? 'Noch nichts geändert' : `Gespeichert, Fassung ${revision}`),
    saving: 'Wird gespeichert …',
    waiting: 'Geändert, noch nicht gespeichert',
    failed: (why) => `Nicht gespeichert: ${why}`,
    conflictShort: 'Auch anderswo geändert',
    recovered:
      'Arbeit, die den Server nicht erreicht hatte, wurde in diesem Browser gefunden und ist wieder auf der Seite.',
  },
  revisions: {
    title: 'Fassungen',
    about:
      'Jedes Speichern bleibt erhalten. Eine alte Fassung wiederherstellen ergibt eine neue; nichts geht verloren.',
    one: (revision) => `Fassung ${revision}`,
    current: 'auf dieser Seite',
    restore: 'Wiederherstellen',
    restoreOf: (revision) => `Fassung ${revision} wiederherstellen`,
    none: 'Noch ist keine Fassung gespeichert.',
  },
  jobs: {
    title: 'Aufträge',
    empty:
      'Noch kein Auftrag. Einen beginnen und ein Fenster messen, oder das Beispiel öffnen: ein erfundenes Wohnmobil mit neun Fenstern.',
    newTitle: 'Auftrag beginnen',
    newName: 'Name des Auftrags',
    newPlaceholder: 'z. B. Sechs Fenster für ein Boot',
    newUnits: 'Längen in',
    start: 'Auftrag beginnen',
    demo: 'Beispiel öffnen',
    demoAbout: 'Ein erfundenes Wohnmobil mit neun Fenstern. Alles darf geändert werden: Es ist eine Kopie.',
    openings: (count) => (count === 1 ? '1 Öffnung' : `${count} Öffnungen`),
    changed: (when) => `geändert ${when}`,
    revision: (revision) => `Fassung ${revision}`,
    needName: 'Dem Auftrag zuerst einen Namen geben.',
  },
};

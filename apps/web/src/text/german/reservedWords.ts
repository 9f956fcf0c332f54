import type { Words } from '../words.ts';

/** Words of the places on a roll where nothing may be cut, in German. */
export const reservedWords: Words['reserved'] = {
  title: 'Freigehaltene Stellen',
  about:
    'Ein Fehler im Stoff, oder Stoff, der für anderes bleibt: Dort wird kein Teil ausgelegt, und keines näher als der Abstand.',
  add: 'Eine Stelle freihalten',
  place: (index) => `Stelle ${index}`,
  from: 'Von, längs der Rolle',
  to: 'Bis',
  near: 'Von, quer zur Rolle',
  far: 'Bis, quer',
  why: 'Was es ist',
  reasons: { flaw: 'ein Fehler', kept: 'für anderes aufgehoben' },
  notes: 'Notiz',
  remove: 'Entfernen',
  removeOf: (index) => `Stelle ${index} entfernen`,
  backwards: 'Sie würde enden, bevor sie beginnt.',
  elsewhere: (count, widths) =>
    count === 1
      ? `Eine Stelle ist auf einer ${widths} breiten Rolle, die diese Schnittlage nicht benutzt.`
      : `${count} Stellen sind auf ${widths} breiten Rollen, die diese Schnittlage nicht benutzt.`,
  drawn: (reason, index) => `Freigehaltene Stelle ${index}: ${reason}`,
  meets: 'Es läge auf einer freigehaltenen Stelle, oder näher daran als der Abstand.',
};

import type { Words } from '../words.ts';

/** Words of the patterns kept for later jobs, in German. */
export const keptWords: Words['kept'] = {
  link: 'Sammlung',
  title: 'Sammlung der Schnittmuster',
  about:
    'Schnittmuster früherer Aufträge, mit ihrer Herkunft. Auf der Stufe Schnittmuster eines Auftrags eines aufbewahren; für eine neue Öffnung eines verwenden, oder dort nachsehen, ob eine Form schon gemacht wurde.',
  search: 'Nach Name, Fahrzeug oder Gebäude, Kunde, Auftrag oder Öffnung suchen',
  searching: 'Wird gesucht …',
  none: 'Noch ist kein Schnittmuster aufbewahrt. Einen Auftrag öffnen, zu Schnittmuster gehen und eines aufbewahren: Kommt dasselbe Modell wieder, ist es hier.',
  noneRemoved: 'Kein Schnittmuster wurde entfernt.',
  noneFound: (text) => `In keinem aufbewahrten Schnittmuster steht alles von „${text}“.`,
  removed: 'Unter entfernten suchen',
  count: (shown, more) =>
    more === 0 ? `${shown} Schnittmuster` : `${shown} von ${shown + more} Schnittmustern`,
  more: 'Mehr zeigen',
  drawing: (name) => `Der Umriss von ${name}`,
  known: (size, sigma) => `${size}, auf ${sigma} bekannt (Standardabweichung)`,
  from: (job, openings) => `Aus „${job}“: ${openings}.`,
  openingOver: (name) => `${name} gewendet`,
  site: (kind, name, customer) =>
    [[kind, name].filter(Boolean).join(' '), customer].filter(Boolean).join(', '),
  method: {
    tape: 'mit dem Maßband gemessen',
    marks: 'von Marken aus gemessen',
    photo: 'aus einem Foto gezeichnet',
    file: 'aus einer Zeichnung',
    points: 'an Punkte angepasst',
    pattern: 'aus einem früher aufbewahrten Schnittmuster',
  },
  kept: (date, method, revision) =>
    `${method}, aufbewahrt ${date}${revision === null ? '' : `, Fassung ${revision} des Auftrags`}`,
  open: 'Herkunft öffnen',
  openOf: (name) => `Herkunft öffnen: ${name}`,
  remove: 'Entfernen',
  removeOf: (name) => `Entfernen: ${name}`,
  restore: 'Zurückholen',
  restoreOf: (name) => `Zurückholen: ${name}`,
  wasRemoved: (name) => `„${name}“ ist von der Liste.`,
  wasRestored: (name) => `„${name}“ ist wieder auf der Liste.`,
  describe: 'Name und Notizen',
  name: 'Name',
  notes: 'Notizen',
  notesExample: 'z. B. Fahrerseite des langen Radstands',
  save: 'Speichern',
  needName: 'Dem Schnittmuster zuerst einen Namen geben.',
  keep: 'Dieses Schnittmuster aufbewahren',
  keepAbout:
    'Für das nächste Mal, wenn dieses Modell kommt: wiederzufinden am Namen, am Fahrzeug oder Gebäude und an der Form.',
  keptNow: (name) => `Als „${name}“ aufbewahrt.`,
  keptAlready: (name) => `Dieses Schnittmuster ist schon aufbewahrt, als „${name}“.`,
  before: (opening) => `Wurde ${opening} schon einmal gemacht?`,
  beforeNone: 'Kein aufbewahrtes Schnittmuster kommt dieser Form nahe, wie auch gedreht oder gewendet.',
  beforeMore: (count) =>
    `${count} weitere von etwa dieser Größe wurden nicht darübergelegt. Ihre Namen lassen sich in der Sammlung suchen.`,
  fits: (deviation, sigma) => `Passt: größte Abweichung ${deviation} (Standardabweichung ${sigma}).`,
  misses: (deviation, over) =>
    `Fast: größte Abweichung ${deviation}, ${over} mehr, als Formen mit gemeinsamem Schnittmuster haben dürfen.`,
  turnedOver: 'Es ist gewendet.',
  upright: 'Es ist nicht gewendet.',
  use: (opening) => `Für ${opening} verwenden`,
  inUse: (opening) => `${opening} verwendet es.`,
  nowUsed: (name, opening) =>
    `${opening} ist jetzt nach „${name}“ gezeichnet. Rückgängig bringt die Messungen zurück.`,
  begin: 'Mit einem aufbewahrten Schnittmuster beginnen',
  beginAbout:
    'Wieder dasselbe Modell? Der Umriss wird übernommen, mit seiner Genauigkeit und seiner Herkunft.',
  beginIt: 'Damit beginnen',
  beginItOf: (name) => `Damit beginnen: ${name}`,
  beginOver: 'Gewendet damit beginnen',
  beginOverOf: (name) => `Gewendet damit beginnen: ${name}`,
  fromKept: (name, date, turnedOver) =>
    `Nach dem aufbewahrten Schnittmuster „${name}“${turnedOver ? ', gewendet' : ''}${date === '' ? '' : `, aufbewahrt ${date}`}.`,
  check:
    'Das gedruckte Schnittmuster vor dem Zuschnitt an dieses Fenster halten: Zwei eines Modells können verschieden sein.',
};

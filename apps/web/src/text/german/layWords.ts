import type { Words } from '../words.ts';

/** Words of laying by hand, in German. */
export const layWords: Words['lay'] = {
  byHand: 'Von Hand auslegen',
  help: 'Ein Teil ziehen, oder es wählen und die Pfeiltasten benutzen (mit Umschalt in größeren Schritten). R dreht es, F wendet es, wo der Stoff es erlaubt, H hält es fest, N und P gehen zum nächsten Teil und zu dem davor. Ein verschobenes Teil ist festgehalten; auf andere gelegt, weichen sie ihm.',
  piece: (of, opening) =>
    of.kind === 'panel'
      ? `Blende von ${opening(of.opening)} (${of.opening})`
      : `Tasche ${of.piece}, Nr. ${of.copy + 1}`,
  pieceAt: (name, along, across, held) =>
    `${name}, ${along} vom Schnittende, ${across} hinauf${held ? ', festgehalten' : ''}`,
  chosen: (name) => `Gewählt: ${name}`,
  none: 'Kein Teil ist gewählt.',
  along: 'Längs der Rolle',
  across: 'Quer zur Rolle',
  turn: 'Gedreht um',
  degrees: (turn) => `${Math.round(turn)}°`,
  flipped: 'Gewendet',
  held: 'Hier festgehalten',
  holdAll: 'Alle festhalten',
  letGo: 'Alle loslassen',
  rest: 'Den Rest neu auslegen',
  push: 'Zusammenschieben',
  pushAbout:
    'Zusammenschieben rückt jedes Teil, festgehalten oder nicht, zum Schnittende und nach unten, bis es anstößt; keines dreht sich oder überholt ein anderes.',
  pushed: (length) => `Zusammengeschoben: ${length} kürzer.`,
  pushedSame: 'Zusammengeschoben: Die Länge bleibt.',
  pushNot: 'Manche Teile liegen, wo sie nicht dürfen; so lassen sie sich nicht zusammenschieben.',
  because: (first, names, play) => {
    const chain = `${first} → ${names.join(' → ')} → Ende`;
    return play === null
      ? `Was die Länge bestimmt: ${chain}. ${names.length === 1 ? 'Dieses Teil reicht' : 'Diese liegen eines am anderen'} bis zum Ende der Schnittlage; kürzer wird sie nur, wenn eines davon anderswo oder gedreht liegt.`
      : `Was die Länge bestimmt: ${chain}, mit ${play} Spiel: Zusammengeschoben ist die Schnittlage um so viel kürzer.`;
  },
  cutEnd: 'Schnittende',
  keptClear: 'freigehaltene Stelle',
  own: 'Zurück zur Schnittlage des Programms',
  endsWith: 'Endet mit',
  automatic: (length, roll) => `${length} der ${roll} breiten Rolle`,
  automaticLabel: 'Das Programm allein bräuchte',
  outside: {
    start: 'Es würde über das Schnittende der Rolle hinausragen.',
    end: 'Es würde über das Ende der Schnittlage hinausragen.',
    left: 'Es läge auf der Webkante.',
    right: 'Es läge auf der Webkante.',
  },
  meets: (other) =>
    `Es läge auf einem festgehaltenen Teil: ${other}. Dieses loslassen, oder hier anderswo ablegen.`,
  makesWay: 'Die Teile darunter weichen: Der Rest wird neu ausgelegt.',
  notSo: 'So darf dieses Teil nicht liegen: Fadenlauf oder Seite wären falsch.',
  free: 'Hier ist frei.',
  larger: 'Vergrößern',
  smaller: 'Verkleinern',
  search: 'Länger nach einer kürzeren Schnittlage suchen',
  searchAbout:
    'Die Schnittlage entsteht in einem Augenblick. Längeres Suchen findet oft eine kürzere; es geht weiter, bis es angehalten wird.',
  searching: (seconds, length) => `Gesucht seit ${seconds} s: ${length}`,
  saved: (length) => `${length} kürzer als die Schnittlage davor`,
  noneFound: 'Noch nichts Kürzeres',
  best: 'Auf dieser Rolle ist keine kürzere Schnittlage möglich.',
  stop: 'Anhalten',
  goOn: 'Weitersuchen',
  use: 'Diese Schnittlage nehmen',
  drop: 'Die bisherige behalten',
};

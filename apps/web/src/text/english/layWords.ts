import type { LaidPlace } from '../../contract.ts';

/** Words of laying by hand, in English. */
export const layWords = {
  byHand: 'Lay by hand',
  help: 'Drag a piece, or choose it and use the arrow keys (with Shift in larger steps). R turns it, F turns it over where the cloth allows, H holds it, N and P go to the next piece and the one before. A piece that was moved is held; put down on others, it makes them move.',
  piece: (of: LaidPlace['of'], opening: (id: string) => string) =>
    of.kind === 'panel'
      ? `panel of ${opening(of.opening)} (${of.opening})`
      : `pocket ${of.piece}, no. ${of.copy + 1}`,
  pieceAt: (name: string, along: string, across: string, held: boolean) =>
    `${name}, ${along} from the cut end, ${across} up${held ? ', held' : ''}`,
  chosen: (name: string) => `Chosen: ${name}`,
  none: 'No piece is chosen.',
  along: 'Along the roll',
  across: 'Across the roll',
  turn: 'Turned by',
  degrees: (turn: number) => `${Math.round(turn)}°`,
  flipped: 'Turned over',
  held: 'Held where it is',
  holdAll: 'Hold all',
  letGo: 'Let go of all',
  rest: 'Lay the rest anew',
  push: 'Push together',
  pushAbout:
    'Push together slides every piece, held or not, to the cut end and down until it touches; none turns or passes another.',
  pushed: (length: string) => `Pushed together: ${length} shorter.`,
  pushedSame: 'Pushed together: the length stays.',
  pushNot: 'Some pieces lie where they may not, so they cannot be pushed together.',
  own: 'Back to the program’s own lay',
  endsWith: 'Ends with',
  because: (first: string, names: readonly string[], play: string | null) => {
    const chain = `${first} → ${names.join(' → ')} → end`;
    const one = names.length === 1;
    return play === null
      ? `What sets the length: ${chain}. ${one ? 'This piece reaches' : 'These lie one against the next'} from ${first === 'cut end' ? 'the cut end' : 'a place kept clear'} to the end of the lay; to be shorter, ${one ? 'it' : 'one of them'} must lie elsewhere or turned.`
      : `What sets the length: ${chain}, with ${play} of play: pushed together, the lay is that much shorter.`;
  },
  cutEnd: 'cut end',
  keptClear: 'place kept clear',
  automatic: (length: string, roll: string) => `${length} of the roll ${roll} wide`,
  automaticLabel: 'The program alone would take',
  outside: {
    start: 'It would stick out over the cut end of the roll.',
    end: 'It would stick out over the end of the lay.',
    left: 'It would lie on the selvage.',
    right: 'It would lie on the selvage.',
  },
  meets: (other: string) =>
    `It would lie on the ${other}, which is held. Let that go, or put this down elsewhere.`,
  makesWay: 'The pieces under it make way: the rest is laid anew.',
  notSo: 'This piece may not lie that way: its grain or its face would be wrong.',
  free: 'Free here.',
  larger: 'Enlarge',
  smaller: 'Reduce',
  search: 'Look longer for a shorter lay',
  searchAbout:
    'The lay is made in a moment. A longer look often finds a shorter one; it goes on until you stop it.',
  searching: (seconds: number, length: string) => `Looking for ${seconds} s: ${length}`,
  saved: (length: string) => `${length} shorter than the lay shown before`,
  noneFound: 'Nothing shorter yet',
  best: 'No shorter lay is possible on this roll.',
  stop: 'Stop',
  goOn: 'Go on looking',
  use: 'Use this lay',
  drop: 'Keep the lay there was',
};

/** Words of the places on a roll where nothing may be cut. */
export const reservedWords = {
  title: 'Places kept clear',
  about:
    'A flaw in the cloth, or cloth you keep for something else: no piece is laid there, and none nearer than the spacing.',
  add: 'Keep a place clear',
  place: (index: number) => `Place ${index}`,
  from: 'From, along the roll',
  to: 'To',
  near: 'From, across the roll',
  far: 'To, across',
  why: 'What it is',
  reasons: { flaw: 'a flaw', kept: 'kept for something else' },
  notes: 'Note',
  remove: 'Remove',
  removeOf: (index: number) => `Remove place ${index}`,
  backwards: 'It would end before it begins.',
  elsewhere: (count: number, widths: string) =>
    count === 1
      ? `One place is on a roll ${widths} wide, which this lay does not use.`
      : `${count} places are on rolls ${widths} wide, which this lay does not use.`,
  drawn: (reason: string, index: number) => `Place ${index} kept clear: ${reason}`,
  meets: 'It would lie on a place kept clear, or nearer to one than the spacing.',
};

/** Words of lays set side by side. */
export const compareWords = {
  title: (lay: string) => `Compare lay ${lay}`,
  about:
    'Put the lay aside as it is now, change it or look longer, and see both: cloth, money, and what is left over.',
  keep: 'Put this lay aside',
  name: (number: number, length: string) => `Put aside ${number}: ${length}`,
  lay: 'Lay put aside',
  now: 'The lay as it is now',
  leaves: 'Left over',
  left: (count: number, worth: string) => (count === 0 ? 'nothing' : `${count}, worth ${worth}`),
  actions: 'What to do with it',
  show: 'Side by side',
  use: 'Use it',
  remove: 'Remove',
  longer: (length: string) => `${length} longer`,
  shorter: (length: string) => `${length} shorter`,
  notSold: 'roll not sold',
  fitsNoLonger: 'The pieces, or the places kept clear, have changed since: it fits no longer.',
};

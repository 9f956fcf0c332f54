/** Words of the patterns kept for later jobs. */
export const keptWords = {
  link: 'Library',
  title: 'Pattern library',
  about:
    'Patterns of earlier jobs, with where they came from. Keep one on the Patterns stage of a job; use one for a new opening, or let the Patterns stage tell whether a shape was made before.',
  search: 'Find by name, vehicle or building, customer, job or opening',
  searching: 'Looking …',
  none: 'No pattern is kept yet. Open a job, go to Patterns, and keep one: the next time the same model comes, it is here.',
  noneRemoved: 'No pattern was removed.',
  noneFound: (text: string) => `No kept pattern has all of “${text}” in it.`,
  removed: 'Look among removed ones',
  count: (shown: number, more: number) =>
    more === 0 ? (shown === 1 ? '1 pattern' : `${shown} patterns`) : `${shown} patterns of ${shown + more}`,
  more: 'Show more',
  drawing: (name: string) => `The outline of ${name}`,
  known: (size: string, sigma: string) => `${size}, known to ${sigma} (standard deviation)`,
  from: (job: string, openings: string) => `From “${job}”: ${openings}.`,
  openingOver: (name: string) => `${name} turned over`,
  site: (kind: string, name: string, customer: string) =>
    [[kind, name].filter(Boolean).join(' '), customer].filter(Boolean).join(', '),
  method: {
    tape: 'taped',
    marks: 'taped from marks',
    photo: 'traced on a photo',
    file: 'from a drawing',
    points: 'fitted to points',
    pattern: 'from a pattern kept before',
  },
  kept: (date: string, method: string, revision: number | null) =>
    `${method}, kept ${date}${revision === null ? '' : `, revision ${revision} of the job`}`,
  open: 'Open where it came from',
  openOf: (name: string) => `Open where it came from: ${name}`,
  remove: 'Remove',
  removeOf: (name: string) => `Remove: ${name}`,
  restore: 'Bring back',
  restoreOf: (name: string) => `Bring back: ${name}`,
  wasRemoved: (name: string) => `“${name}” is off the list.`,
  wasRestored: (name: string) => `“${name}” is on the list again.`,
  describe: 'Name and notes',
  name: 'Name',
  notes: 'Notes',
  notesExample: 'e.g. driver’s side of the long wheelbase',
  save: 'Save',
  needName: 'Give the pattern a name first.',
  keep: 'Keep this pattern',
  keepAbout:
    'For the next time this model comes: found again by its name, by the vehicle or building, and by its shape.',
  keptNow: (name: string) => `Kept as “${name}”.`,
  keptAlready: (name: string) => `This pattern is kept already, as “${name}”.`,
  before: (opening: string) => `Was ${opening} made before?`,
  beforeNone: 'No kept pattern comes near this shape, turned any way or turned over.',
  beforeMore: (count: number) =>
    `${count} more of about this size were not laid on it. Their names can be searched in the pattern library.`,
  fits: (deviation: string, sigma: string) =>
    `Fits: worst difference ${deviation} (standard deviation ${sigma}).`,
  misses: (deviation: string, over: string) =>
    `Nearly: worst difference ${deviation}, ${over} more than shapes that share a pattern may have.`,
  turnedOver: 'It is turned over.',
  upright: 'It is not turned over.',
  use: (opening: string) => `Use it for ${opening}`,
  inUse: (opening: string) => `${opening} uses it.`,
  nowUsed: (name: string, opening: string) =>
    `${opening} is now drawn from “${name}”. Undo brings its readings back.`,
  begin: 'Begin from a kept pattern',
  beginAbout:
    'The same model again? Its outline is taken over with how well it is known and where it came from.',
  beginIt: 'Begin from it',
  beginItOf: (name: string) => `Begin from it: ${name}`,
  beginOver: 'Begin from it, turned over',
  beginOverOf: (name: string) => `Begin from it, turned over: ${name}`,
  fromKept: (name: string, date: string, turnedOver: boolean) =>
    `From the kept pattern “${name}”${turnedOver ? ', turned over' : ''}${date === '' ? '' : `, kept ${date}`}.`,
  check: 'Lay the printed pattern on this window before cutting: two of one model may differ.',
};

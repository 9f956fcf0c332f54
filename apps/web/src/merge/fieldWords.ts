import type { Job, ReadingName, UnitName } from '../contract.ts';
import { showLength } from '../text/show.ts';
import type { Words } from '../text/words.ts';
import { type FieldPath, isPlain } from './parts.ts';

/** A field of the job in words: “W3 Galley: Bottom side”. `jobs`: where the names of openings are looked up, in turn. */
export function fieldWords(path: FieldPath, jobs: readonly Job[], w: Words): string {
  const [first, key, ...rest] = path;
  if (first !== 'openings' || key === undefined) return partWords(path, w);
  const opening = jobs.flatMap((job) => job.openings).find(({ id }) => id === key);
  const name = opening ? w.openings.title(opening.id, opening.name) : key;
  return `${name}: ${rest.length === 0 ? w.keep.whole : partWords(rest, w)}`;
}

function partWords(path: FieldPath, w: Words): string {
  const reading = path.indexOf('readings');
  if (reading >= 0 && path[reading + 1] !== undefined) return readingWords(path.slice(reading + 1), w);
  // What an entry is as a value needs no word beside the entry's own.
  const shown = path.filter((part, index) => !(index === path.length - 1 && part === 'entered'));
  return shown.map((part) => w.keep.field[part] ?? part).join(', ');
}

function readingWords([name = '', ...rest]: FieldPath, w: Words): string {
  const [, of = name, again] = /^(\w+)(?: \((\d+)\))?$/.exec(name) ?? [];
  const long = w.readings.long[of as ReadingName] ?? of;
  const reading = again ? w.readings.again(Number(again), long) : long;
  const part = rest.filter((one) => one !== 'entered').map((one) => w.keep.field[one] ?? one);
  return [reading, ...part].join(', ');
}

const NUMBERS_AS_THEY_ARE = new Set(['wind', 'gustFactor', 'hottest', 'version', 'bulge']);

/** A value of a field in words. */
export function valueWords(path: FieldPath, value: unknown, units: UnitName, w: Words): string {
  const { none, empty, yes, no, more } = w.keep.value;
  if (value === undefined || value === null) return none;
  if (typeof value === 'boolean') return value ? yes : no;
  if (typeof value === 'number')
    return NUMBERS_AS_THEY_ARE.has(path.at(-1) ?? '') ? String(value) : showLength(value, units, 32);
  if (typeof value === 'string') return value.trim() === '' ? empty : value;
  const inner = Array.isArray(value)
    ? value.map((one) => [String(path.at(-1)), one] as const)
    : Object.entries(value);
  if (isPlain(value) && typeof value.name === 'string') return value.name || empty;
  const shown = inner.slice(0, 6).map(([key, one]) => valueWords([...path, key], one, units, w));
  return shown.length === 0 ? none : [...shown, ...(inner.length > 6 ? [more] : [])].join(', ');
}

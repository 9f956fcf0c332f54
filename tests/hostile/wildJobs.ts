import { defaultCatalogue, exampleJob, type Job, type Opening } from '@panewright/contract';
import fc from 'fast-check';

type Json = null | boolean | number | string | Json[] | { [key: string]: Json };

const plain = (value: unknown): Json => JSON.parse(JSON.stringify(value)) as Json;

const readings = [
  'bottom',
  'right',
  'top',
  'left',
  'rising',
  'falling',
  'midWidth',
  'midHeight',
  'radiusBottomLeft',
  'radiusBottomRight',
  'radiusTopRight',
  'radiusTopLeft',
] as const;

/** What a person or a broken program may put where a length belongs. */
const entry = fc.oneof(
  fc.integer({ min: 1, max: 4000 }).map((n) => `${Math.floor(n / 16)} ${n % 16}/16`),
  fc.integer({ min: 0, max: 3000 }).map(String),
  fc.constantFrom(
    '0',
    '',
    ' ',
    '-5',
    '1/0',
    '24 3//8',
    '2\' 0 3/8"',
    '⅜',
    '1,5',
    '1,234',
    '1e5',
    'NaN',
    'Infinity',
    '9'.repeat(40),
  ),
  fc.string({ maxLength: 42 }),
);

const sane = fc.record({
  w: fc.integer({ min: 4, max: 120 }),
  h: fc.integer({ min: 4, max: 60 }),
  skew: fc.double({ min: -2, max: 2, noNaN: true }),
  r: fc.integer({ min: 0, max: 30 }),
});

/** An opening whose readings may or may not go together. Every number is within what the document allows. */
const opening: fc.Arbitrary<Opening> = fc
  .record({
    shape: sane,
    odd: fc.array(fc.tuple(fc.constantFrom(...readings), fc.integer({ min: 0, max: 6000 })), {
      maxLength: 2,
    }),
    kind: fc.constantFrom('mostly', 'some', 'odd'),
    keep: fc.array(fc.boolean(), { minLength: 12, maxLength: 12 }),
    standOff: fc.constantFrom(0, 0, 3, 30),
    layers: fc.array(
      fc.record({
        kind: fc.constantFrom('glass' as const, 'air' as const, 'film' as const),
        thickness: fc.constantFrom(0.02, 3, 4, 6, 60),
      }),
      { minLength: 1, maxLength: 4 },
    ),
    exit: fc.boolean(),
    curved: fc.boolean(),
    box: fc.record({
      x: fc.integer({ min: -500, max: 1500 }),
      y: fc.integer({ min: -500, max: 1500 }),
      width: fc.integer({ min: 1, max: 900 }),
      height: fc.integer({ min: 1, max: 900 }),
    }),
    spacing: fc.constantFrom(50, 200, 609.6, 2000),
    pocket: fc.constantFrom(20, 76.2, 150, 300),
    allowance: fc.constantFrom(-100, -20, 0, 6.35, 60, 200),
    finish: fc.constantFrom<Opening['choices']['finish'] & object>(
      { kind: 'hotCut' },
      { kind: 'hem', width: 4 },
      { kind: 'hem', width: 100 },
      { kind: 'binding', binding: 'centrefold-22' },
      { kind: 'binding', binding: 'none-such' },
    ),
  })
  .map((wild) => openingOf(wild));

function openingOf(wild: {
  shape: { w: number; h: number; skew: number; r: number };
  odd: [(typeof readings)[number], number][];
  kind: string;
  keep: boolean[];
  standOff: number;
  layers: Opening['glazing']['layers'];
  exit: boolean;
  curved: boolean;
  box: { x: number; y: number; width: number; height: number };
  spacing: number;
  pocket: number;
  allowance: number;
  finish: NonNullable<Opening['choices']['finish']>;
}): Opening {
  const { w, h, skew, r } = wild.shape;
  const diagonal = (sign: number) => Math.hypot(w + sign * skew, h);
  const lengths = [w, h, w, h, diagonal(1), diagonal(-1), w, h, r / 4, r / 4, r / 4, r / 4];
  const list = readings
    .map((of, i) => ({ of, entered: `${lengths[i]!.toFixed(3)}`, unit: 'in' as const }))
    .filter((_, i) => wild.kind === 'mostly' || wild.keep[i]);
  const odd =
    wild.kind === 'odd' ? wild.odd.map(([of, mm]) => ({ of, entered: `${mm}`, unit: 'mm' as const })) : [];
  return {
    ...exampleJob.openings[0]!,
    survey: {
      method: 'tape',
      diagonalsTo: wild.exit ? 'round' : 'sharp',
      readings: [...list, ...odd].filter(({ entered, of }) => of.startsWith('radius') || Number(entered) > 0),
    },
    glazing: { layers: wild.layers, standOff: wild.standOff, curved: wild.curved },
    exit: wild.exit,
    obstructions: [{ id: 'o1', name: 'handle', ...wild.box }],
    choices: {
      finish: wild.finish,
      fit: { all: wild.allowance, edges: wild.curved ? { bottom: -wild.allowance / 2, sill: 3 } : {} },
      hold: { spacing: wild.spacing, pocket: wild.pocket },
    },
  };
}

/** A job that keeps to the document's rules and to no other. */
export const allowedJob: fc.Arbitrary<Job> = fc
  .oneof({ weight: 4, arbitrary: fc.tuple(opening) }, { weight: 1, arbitrary: fc.tuple(opening, opening) })
  .map((openings) => ({
    ...exampleJob,
    openings: openings.map((one, i) => ({ ...one, id: `W${i}` })),
  }));

const oddNumber = fc.constantFrom(
  0,
  -0,
  -1,
  1,
  0.5,
  1e-300,
  5e-324,
  1e9,
  1e308,
  -1e308,
  2 ** 31,
  2 ** 53,
  123.456,
);
const anything: fc.Arbitrary<Json> = fc.oneof(
  oddNumber,
  entry,
  fc.constantFrom<Json>(null, true, [], {}, 'in', 'mm', 'binding', 'hotCut', 'panewright.job', 2),
  fc.jsonValue({ maxDepth: 2 }) as fc.Arbitrary<Json>,
);

interface Blow {
  readonly how: 'replace' | 'leaveOut' | 'add' | 'twice' | 'empty' | 'own';
  readonly where: number;
  readonly value: Json;
  readonly key: string;
}
const blow: fc.Arbitrary<Blow> = fc.record({
  how: fc.constantFrom('replace', 'replace', 'replace', 'leaveOut', 'add', 'twice', 'empty', 'own'),
  where: fc.nat(1_000_000),
  value: anything,
  key: fc.oneof(fc.constantFrom('id', 'name', 'x', 'toString', 'length'), fc.string({ maxLength: 12 })),
});

type Holder = { readonly holder: Json[] | { [key: string]: Json }; readonly key: string | number };

/** Every place of a document, in order. */
function placesOf(root: Json): Holder[] {
  const places: Holder[] = [];
  const visit = (value: Json): void => {
    if (Array.isArray(value)) {
      for (const [index, one] of value.entries()) {
        places.push({ holder: value, key: index });
        visit(one);
      }
    } else if (typeof value === 'object' && value !== null) {
      for (const [key, one] of Object.entries(value)) {
        places.push({ holder: value, key });
        visit(one);
      }
    }
  };
  visit(root);
  return places;
}

function strike(document: Json, { how, where, value, key }: Blow): void {
  const places = placesOf(document);
  if (places.length === 0) return;
  const place = places[where % places.length]!;
  const holder = place.holder as { [key: string | number]: Json };
  const now = holder[place.key]!;
  if (how === 'replace') holder[place.key] = value;
  else if (how === 'empty') holder[place.key] = Array.isArray(now) ? [] : typeof now === 'string' ? '' : {};
  else if (how === 'leaveOut') {
    if (Array.isArray(holder)) holder.splice(Number(place.key), 1);
    else delete holder[place.key];
  } else if (how === 'twice' && Array.isArray(holder)) holder.push(now);
  else if (typeof now === 'object' && now !== null && !Array.isArray(now))
    Object.defineProperty(now, how === 'own' ? '__proto__' : key, {
      value,
      enumerable: true,
      configurable: true,
      writable: true,
    });
}

/** A job struck in one to six places. */
const struckJob: fc.Arbitrary<Json> = fc
  .tuple(allowedJob, fc.array(blow, { minLength: 1, maxLength: 6 }))
  .map(([job, blows]) => {
    const document = plain(job);
    for (const one of blows) strike(document, one);
    return document;
  });

/** What comes in from outside: mostly nearly right, some quite right, some nothing of the kind. */
export const wildDocument: fc.Arbitrary<Json> = fc.oneof(
  { weight: 12, arbitrary: struckJob },
  { weight: 1, arbitrary: allowedJob.map(plain) },
  { weight: 1, arbitrary: fc.oneof(fc.jsonValue({ maxDepth: 4 }) as fc.Arbitrary<Json>, anything) },
);

/** A catalogue whose numbers are other ones, within the rules or not. */
export const wildCatalogue: fc.Arbitrary<Json> = fc
  .array(
    fc.tuple(
      fc.nat(1_000_000),
      fc.oneof(
        {
          weight: 8,
          arbitrary: fc.constantFrom(0, 0.02, 0.3, 1, 2, 5, 10, 40, 100, 600, 2000, 6000, 1_000_000),
        },
        { weight: 1, arbitrary: anything },
      ),
    ),
    { minLength: 1, maxLength: 6 },
  )
  .map((changes) => {
    const document = plain(defaultCatalogue);
    for (const [where, value] of changes) {
      const numbers = placesOf(document).filter(
        ({ holder, key }) => typeof (holder as { [key: string | number]: Json })[key] === 'number',
      );
      const { holder, key } = numbers[where % numbers.length]!;
      (holder as { [key: string | number]: Json })[key] = value;
    }
    return document;
  });

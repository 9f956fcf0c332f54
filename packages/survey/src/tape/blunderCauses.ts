import { type Millimetre, MM_PER_INCH, mm, parseLength } from '@panewright/quantity';

export type BlunderCause =
  | 'oneInch'
  | 'halfInch'
  | 'quarterInch'
  | 'eighthInch'
  | 'oneFoot'
  | 'fiveMillimetres'
  | 'tenMillimetres'
  | 'hundredMillimetres'
  | 'fractionNumerator'
  | 'fractionDenominator'
  | 'fractionLeftOff'
  | 'digitsSwapped'
  | 'digitMisread'
  | 'exchanged'
  | 'unexplained';

/** One way to misread: `error` = read − true in mm, `weight` its share among a maker's blunders. */
export interface PossibleBlunder {
  readonly cause: Exclude<BlunderCause, 'exchanged' | 'unexplained'>;
  readonly error: Millimetre;
  readonly weight: number;
}

type Entry = 'in' | 'mm' | undefined;

/**
 * Weights are a judgement of how often each slip is made (common practice, no source): only their rough size matters.
 * Holding the tape at its 1 in or 100 mm mark and forgetting to take it off reads long, so long is twice as likely.
 */
const SLIPS: Readonly<
  Record<'in' | 'mm', readonly (readonly [PossibleBlunder['cause'], number, number, number])[]>
> = {
  in: [
    ['oneInch', MM_PER_INCH, 0.12, 0.06],
    ['halfInch', MM_PER_INCH / 2, 0.05, 0.05],
    ['quarterInch', MM_PER_INCH / 4, 0.03, 0.03],
    ['eighthInch', MM_PER_INCH / 8, 0.03, 0.03],
    ['oneFoot', 12 * MM_PER_INCH, 0.015, 0.015],
  ],
  mm: [
    ['tenMillimetres', 10, 0.12, 0.12],
    ['hundredMillimetres', 100, 0.12, 0.06],
    ['fiveMillimetres', 5, 0.04, 0.04],
  ],
};

const NUMERATOR_WEIGHT = 0.15;
const DENOMINATOR_WEIGHT = 0.05;
const LEFT_OFF_WEIGHT = 0.05;
const SWAPPED_WEIGHT = 0.12;
const MISREAD_WEIGHT = 0.15;
/** Digits a tired eye takes for one another count this many times as much. */
const ALIKE = /^(?:17|71|38|83|69|96|60|06|56|65|80|08|49|94|35|53|27|72)$/;
const ALIKE_FACTOR = 4;

/**
 * The ways in which a reading may have been misread or miskeyed. With the entered text, also what the text itself could
 * have been: another numerator, digits swapped, a digit mistaken.
 *
 * @source judgement; common practice, no source
 */
export function possibleBlunders(value: Millimetre, entered: string | undefined): readonly PossibleBlunder[] {
  const unit = entered === undefined ? undefined : entryUnit(value, entered);
  const kinds = unit === undefined ? (['in', 'mm'] as const) : ([unit] as const);
  const slips = kinds.flatMap((kind) =>
    SLIPS[kind].flatMap(([cause, size, long, short]) => [
      { cause, error: mm(size), weight: long / kinds.length },
      { cause, error: mm(-size), weight: short / kinds.length },
    ]),
  );
  return unit === undefined ? slips : [...slips, ...textBlunders(value, entered!, unit)];
}

/** The unit in which the text gives the value; undefined when the text says something else. */
function entryUnit(value: Millimetre, entered: string): Entry {
  const says = (unit: 'in' | 'mm') => {
    const read = parseLength(entered, unit);
    return read.ok && Math.abs(read.value - value) < 0.01;
  };
  const [inches, millimetres] = [says('in'), says('mm')];
  if (inches && millimetres) return /mm|cm|m/i.test(entered) ? 'mm' : 'in';
  return inches ? 'in' : millimetres ? 'mm' : undefined;
}

interface Variant {
  readonly text: string;
  readonly cause: PossibleBlunder['cause'];
  readonly weight: number;
}

function textBlunders(value: Millimetre, entered: string, unit: 'in' | 'mm'): readonly PossibleBlunder[] {
  const variants = [
    ...fractionVariants(entered, unit),
    ...swappedVariants(entered),
    ...misreadVariants(entered),
  ];
  return variants.flatMap(({ text, cause, weight }) => {
    const read = parseLength(text, unit);
    if (!read.ok || Math.abs(read.value - value) < 1e-6) return [];
    return [{ cause, error: mm(value - read.value), weight }];
  });
}

function fractionVariants(entered: string, unit: 'in' | 'mm'): readonly Variant[] {
  const match = /(\d+)\/(\d+)/.exec(entered);
  if (!match)
    return unit === 'in' && /^\s*\d+\s*("|in\.?)?\s*$/.test(entered) ? leftOffVariants(entered) : [];
  const [written, over, under] = [match[0], Number(match[1]), Number(match[2])];
  const numerators = Array.from({ length: under - 1 }, (_, i) => i + 1).filter((n) => n !== over);
  const denominators = [2, 4, 8, 16, 32].filter((d) => d !== under && d > over);
  const replaced = (fraction: string) => entered.replace(written, fraction);
  return [
    ...numerators.map((n) => ({
      text: replaced(`${n}/${under}`),
      cause: 'fractionNumerator' as const,
      weight: NUMERATOR_WEIGHT / numerators.length,
    })),
    ...denominators.map((d) => ({
      text: replaced(`${over}/${d}`),
      cause: 'fractionDenominator' as const,
      weight: DENOMINATOR_WEIGHT / denominators.length,
    })),
  ];
}

function leftOffVariants(entered: string): readonly Variant[] {
  const whole = /\d+/.exec(entered)![0];
  return Array.from({ length: 15 }, (_, i) => ({
    text: entered.replace(whole, `${whole} ${i + 1}/16`),
    cause: 'fractionLeftOff' as const,
    weight: LEFT_OFF_WEIGHT / 15,
  }));
}

/** Fractions are not touched here: their slips are counted above. */
const digitPlaces = (entered: string) =>
  [...entered.matchAll(/\d/g)]
    .map((match) => match.index)
    .filter((at) => !/^\d*\//.test(entered.slice(at)) && !/\/\d*$/.test(entered.slice(0, at)));

function swappedVariants(entered: string): readonly Variant[] {
  const places = digitPlaces(entered).filter((at) => /\d/.test(entered[at + 1] ?? ''));
  return places.map((at) => ({
    text: `${entered.slice(0, at)}${entered[at + 1]}${entered[at]}${entered.slice(at + 2)}`,
    cause: 'digitsSwapped' as const,
    weight: SWAPPED_WEIGHT / places.length,
  }));
}

function misreadVariants(entered: string): readonly Variant[] {
  const all = digitPlaces(entered).flatMap((at) =>
    [...'0123456789']
      .filter((digit) => digit !== entered[at])
      .map((digit) => ({
        text: `${entered.slice(0, at)}${digit}${entered.slice(at + 1)}`,
        share: ALIKE.test(`${digit}${entered[at]}`) ? ALIKE_FACTOR : 1,
      })),
  );
  const total = all.reduce((sum, { share }) => sum + share, 0);
  return all.map(({ text, share }) => ({
    text,
    cause: 'digitMisread' as const,
    weight: (MISREAD_WEIGHT * share) / total,
  }));
}

import {
  type Celsius,
  celsius,
  ok,
  type Quantity,
  type Result,
  refuse,
  type Tesla,
  tesla,
} from '@panewright/quantity';

export type KiloamperePerMetre = Quantity<'kA/m'>;

/** Sintered neodymium by its grade name. Figures are recalled trade figures: let the maker override them. */
export interface MagnetGrade {
  readonly name: string;
  /** `design` is the low end of the class: what the tool counts on. */
  readonly remanence: { readonly low: Tesla; readonly design: Tesla; readonly high: Tesla };
  /** Least intrinsic coercivity at 20 C. */
  readonly coercivity: KiloamperePerMetre;
  /** What the label promises; a thin magnet may lose pull for good well below it. */
  readonly labelLimit: Celsius;
  /** None of these figures was read in a standard. */
  readonly evidence: 'recalled';
}

export type GradeRefusal = {
  readonly code: 'GRADE_UNKNOWN';
  readonly name: string;
  readonly known: readonly string[];
};

/** Remanence by energy class, tesla: low, design, high. Source: sources.md#grade-table. */
const CLASSES: { readonly [grade: string]: readonly [low: number, design: number, high: number] } = {
  N35: [1.17, 1.17, 1.22],
  N38: [1.22, 1.22, 1.25],
  N40: [1.25, 1.25, 1.28],
  N42: [1.28, 1.28, 1.32],
  N45: [1.32, 1.32, 1.37],
  N48: [1.37, 1.37, 1.42],
  N50: [1.39, 1.39, 1.44],
  N52: [1.42, 1.42, 1.48],
};

/** Least coercivity (kA/m) and label limit (C) by suffix. Source: sources.md#grade-table. */
const SUFFIXES: { readonly [suffix: string]: readonly [coercivity: number, label: number] } = {
  '': [955, 80],
  M: [1114, 100],
  H: [1353, 120],
  SH: [1592, 150],
  UH: [1990, 180],
  EH: [2388, 200],
};

/** Plain N50 and N52 are often sold with less coercivity, N52 with a lower label. */
const PLAIN_EXCEPTIONS: { readonly [grade: string]: readonly [coercivity: number, label: number] } = {
  N50: [876, 80],
  N52: [876, 60],
};

/**
 * Figures of a neodymium grade such as `N42` or `N45SH`. Not every class is made in every suffix.
 *
 * @returns remanence in tesla, coercivity in kA/m, label limit in C
 * @accuracy recalled class limits, not read in IEC 60404-8-1; the design value is 0.5 to 2 % under what the
 *   energy class implies
 * @refuses GRADE_UNKNOWN
 * @source sources.md#grade-table
 */
export function magnetGrade(name: string): Result<MagnetGrade, GradeRefusal> {
  const parts = /^(N\d\d)(|M|H|SH|UH|EH)$/.exec(name.trim().toUpperCase());
  const remanence = parts && CLASSES[parts[1]!];
  if (!remanence) return refuse({ code: 'GRADE_UNKNOWN', name, known: Object.keys(CLASSES) });
  const suffix = parts[2]!;
  const [coercivity, label] = (suffix === '' ? PLAIN_EXCEPTIONS[parts[1]!] : undefined) ?? SUFFIXES[suffix]!;
  return ok({
    name: parts[1]! + suffix,
    remanence: { low: tesla(remanence[0]), design: tesla(remanence[1]), high: tesla(remanence[2]) },
    coercivity: coercivity as KiloamperePerMetre,
    labelLimit: celsius(label),
    evidence: 'recalled',
  });
}

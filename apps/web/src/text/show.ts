import {
  type Figure,
  formatLength,
  MM_PER_INCH,
  type MoneySign,
  mm,
  showMoney as moneyIn,
  toMilesPerHour,
  toPoundsForce,
  type UnitName,
} from '../contract.ts';
import { figure, local } from './decimals.ts';
import { spoken } from './useWords.ts';

/** Money as the catalogue's currency has it, the decimal mark and the place of the symbol as the language has them. */
export const showMoney = (minorUnits: number, sign: MoneySign | undefined): string =>
  figure(moneyIn(minorUnits, sign, spoken().language));

/** A length as the shop reads it: to 1/16 in, hardware to 1/32 in, or to 0.1 mm. Rounded here and nowhere before. */
export const showLength = (value: number, units: UnitName, finest: 16 | 32 = 16): string =>
  figure(
    units === 'in'
      ? formatLength(mm(value), { unit: 'in', denominator: finest })
      : local(formatLength(mm(value), { unit: 'mm' })),
  );

/** A bare number, rounded here. */
export const showNumber = (value: number, decimals: number): string => local(value.toFixed(decimals));

/** Small differences: hundredths of an inch would hide in a sixteenth, so they stay in millimetres. */
export const showSmall = (value: number): string => figure(`${showNumber(value, value >= 10 ? 1 : 2)} mm`);

/** Width by height, the unit once. */
export const showSize = (width: number, height: number, units: UnitName): string => {
  const first = formatLength(
    mm(width),
    units === 'in' ? { unit: 'in', denominator: 16, bare: true } : { unit: 'mm', decimals: 0, bare: true },
  );
  const second = formatLength(
    mm(height),
    units === 'in' ? { unit: 'in', denominator: 16 } : { unit: 'mm', decimals: 0 },
  );
  return figure(`${first} × ${second}`);
};

/** Long runs: yards or metres beside the exact length would be one number too many; two decimals say enough. */
export const showRun = (value: number, units: UnitName): string =>
  figure(
    units === 'in' ? `${showNumber(value / (36 * MM_PER_INCH), 2)} yd` : `${showNumber(value / 1000, 2)} m`,
  );

export const showArea = (value: number, units: UnitName): string =>
  figure(
    units === 'in'
      ? `${showNumber(value / (12 * MM_PER_INCH) ** 2, 2)} sq ft`
      : `${showNumber(value / 1e6, 3)} m²`,
  );

export const showForce = (value: number, units: UnitName): string =>
  figure(
    units === 'in'
      ? `${showNumber(value, 1)} N (${showNumber(toPoundsForce(value as never), 1)} lbf)`
      : `${showNumber(value, 1)} N`,
  );

export const showSpeed = (value: number, units: UnitName): string =>
  figure(
    units === 'in'
      ? `${showNumber(value, 1)} m/s (${showNumber(toMilesPerHour(value as never), 0)} mph)`
      : `${showNumber(value, 1)} m/s`,
  );

export const showMinutes = (minutes: number): string => {
  const whole = Math.round(minutes);
  return figure(
    whole < 60 ? `${whole} min` : `${Math.floor(whole / 60)} h ${`${whole % 60}`.padStart(2, '0')} min`,
  );
};

export const showPercent = (ratio: number): string => figure(`${showNumber(ratio * 100, 1)} %`);

/** Any figure of the plan, by its unit. */
export function showFigure({ value, unit }: Figure, units: UnitName, sign: MoneySign): string {
  switch (unit) {
    case 'mm':
      return showLength(value, units);
    case 'mm2':
      return showArea(value, units);
    case 'count':
      return `${value}`;
    case 'min':
      return showMinutes(value);
    case 'money':
      return showMoney(value, sign);
    case 'N':
      return showForce(value, units);
    case 'g':
      return `${Math.round(value)} g`;
    case 'ratio':
      return showNumber(value, 2);
    case 'm/s':
      return showSpeed(value, units);
  }
}

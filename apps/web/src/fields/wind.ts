import { create } from 'zustand';
import {
  beaufortForce,
  beaufortSpeeds,
  metrePerSecond,
  type SpeedUnit,
  type UnitName,
  windSpeed,
  windSpeedIn,
} from '../contract.ts';
import { local } from '../text/decimals.ts';
import { words } from '../text/useWords.ts';
import type { ReadEntry } from './lengthEntry.ts';
import { readNumber } from './numberEntry.ts';

/** Units a maker reads wind and heat in. */
export type WindUnit = SpeedUnit | 'Bft';
export type HeatUnit = 'C' | 'F';
export const WIND_UNITS: readonly WindUnit[] = ['m/s', 'km/h', 'mph', 'kn', 'Bft'];
export const HEAT_UNITS: readonly HeatUnit[] = ['C', 'F'];

interface Chosen {
  readonly wind: WindUnit | null;
  readonly heat: HeatUnit | null;
}

const KEY = 'panewright.weatherUnits';

function kept(): Chosen {
  try {
    const { wind, heat } = JSON.parse(localStorage.getItem(KEY) ?? '{}') as Partial<Chosen>;
    return {
      wind: WIND_UNITS.find((one) => one === wind) ?? null,
      heat: HEAT_UNITS.find((one) => one === heat) ?? null,
    };
  } catch {
    return { wind: null, heat: null };
  }
}

const useChosen = create<Chosen>(kept);

/** The unit this browser's maker chose last, else the one that goes with the job's lengths. */
export const useWindUnit = (units: UnitName): WindUnit =>
  useChosen((state) => state.wind ?? (units === 'in' ? 'mph' : 'm/s'));
export const useHeatUnit = (units: UnitName): HeatUnit =>
  useChosen((state) => state.heat ?? (units === 'in' ? 'F' : 'C'));

export function chooseUnits(change: Partial<Chosen>): void {
  useChosen.setState(change);
  try {
    localStorage.setItem(KEY, JSON.stringify(useChosen.getState()));
  } catch {
    // A browser that keeps nothing still shows the unit until the page is left.
  }
}

const rounded = (value: number, decimals: number): string => local(`${Number(value.toFixed(decimals))}`);
const forceOf = (speed: number): number => {
  const force = beaufortForce(metrePerSecond(speed));
  return force.ok ? force.value : 12;
};

/** A mean wind as text for a field, without its unit. */
export const windEntry = (speed: number, unit: WindUnit): string =>
  unit === 'Bft' ? `${forceOf(speed)}` : rounded(windSpeedIn(metrePerSecond(speed), unit), 1);

/** A mean wind with its unit; a force of Beaufort's with its speed, since it stands for a range. */
export const showWind = (speed: number, unit: WindUnit): string =>
  unit === 'Bft'
    ? `${rounded(speed, 1)} m/s (${forceOf(speed)} Bft)`
    : `${rounded(windSpeedIn(metrePerSecond(speed), unit), 1)} ${unit}`;

const NAMES: readonly (readonly [RegExp, WindUnit])[] = [
  [/m\s*\/\s*s$/i, 'm/s'],
  [/km\s*\/?\s*h$/i, 'km/h'],
  [/mph$/i, 'mph'],
  [/(kn|kt|kts|knots?)$/i, 'kn'],
  [/(bft|beaufort)$/i, 'Bft'],
];

/** Reads a mean wind, m/s; a unit written after the number goes before the chosen one. A force stands for its upper end. */
export function readWind(text: string, unit: WindUnit): ReadEntry {
  const plain = text.trim();
  const named = NAMES.find(([name]) => name.test(plain));
  const force = /^(f|force)\s*\d/i.test(plain);
  const bare = named ? plain.replace(named[0], '') : plain.replace(/^(f|force)/i, '');
  const read = readNumber(bare);
  if (!read.ok || read.value < 0) return { ok: false, sentence: words().holding.sliders.notWind(plain) };
  const of = force ? 'Bft' : (named?.[1] ?? unit);
  if (of !== 'Bft') return { ok: true, value: windSpeed(read.value, of) };
  const speeds = beaufortSpeeds(read.value);
  return speeds.ok
    ? { ok: true, value: speeds.value.high }
    : { ok: false, sentence: words().holding.sliders.notForce };
}

const toFahrenheit = (celsius: number): number => (celsius * 9) / 5 + 32;
const toCelsius = (fahrenheit: number): number => ((fahrenheit - 32) * 5) / 9;

export const heatEntry = (celsius: number, unit: HeatUnit): string =>
  rounded(unit === 'F' ? toFahrenheit(celsius) : celsius, 1);
export const showHeat = (celsius: number, unit: HeatUnit): string => `${heatEntry(celsius, unit)} °${unit}`;

/** Reads a temperature, °C; a unit written after the number goes before the chosen one. */
export function readHeat(text: string, unit: HeatUnit): ReadEntry {
  const plain = text.trim();
  const named = /°?\s*([cf])$/i.exec(plain);
  const read = readNumber(named ? plain.slice(0, named.index) : plain);
  if (!read.ok) return { ok: false, sentence: words().holding.sliders.notHeat(plain) };
  const of = named ? named[1]!.toUpperCase() : unit;
  return { ok: true, value: of === 'F' ? toCelsius(read.value) : read.value };
}

import type { UnitName } from '../contract.ts';
import type { XY } from './view.ts';

const WAYS: Readonly<Record<string, XY>> = {
  ArrowLeft: { x: -1, y: 0 },
  ArrowRight: { x: 1, y: 0 },
  ArrowUp: { x: 0, y: -1 },
  ArrowDown: { x: 0, y: 1 },
};

/** Which way an arrow key points on the screen, y down; undefined for another key. */
export const arrowWay = (key: string): XY | undefined => WAYS[key];

/** Step of an arrow key, mm: 1/16 in or 1 mm; the coarse one, with Shift, an inch or 10 mm. */
export const arrowStep = (units: UnitName, coarse: boolean): number =>
  units === 'in' ? (coarse ? 25.4 : 25.4 / 16) : coarse ? 10 : 1;

import type { UnitName } from '@panewright/design';

/** Sizes that a printed page is checked by, in the job's own units: what the shop's rule reads at a glance. */
export interface CheckSizes {
  readonly square: number;
  readonly squareText: string;
  readonly bar: number;
  readonly barText: string;
  readonly smallSquare: number;
  readonly smallSquareText: string;
  readonly tileBar: number;
  readonly tileBarText: string;
  readonly step: number;
  /** How far the square may be out: half a per cent at the most, and to be seen on the rule. */
  readonly mostOut: string;
}

export const checkSizes = (units: UnitName): CheckSizes =>
  units === 'in'
    ? {
        ...{ square: 101.6, squareText: '4 in', bar: 152.4, barText: '6 in', step: 25.4 },
        ...{ smallSquare: 12.7, smallSquareText: '1/2 in', tileBar: 101.6, tileBarText: '4 in' },
        mostOut: '1/64 in',
      }
    : {
        ...{ square: 100, squareText: '100 mm', bar: 150, barText: '150 mm', step: 10 },
        ...{ smallSquare: 10, smallSquareText: '10 mm', tileBar: 100, tileBarText: '100 mm' },
        mostOut: '0.5 mm',
      };

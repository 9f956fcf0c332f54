import { encode } from 'uqr';
import { INK } from '../ink.ts';
import { rectangle } from '../path.ts';
import type { Item } from '../sheet.ts';

export interface QrCode {
  /** Modules along a side, without the quiet zone. */
  readonly modules: number;
  /** Draws it with its lower left corner at (x, y), `side` mm with the quiet zone of four modules round it. */
  readonly draw: (x: number, y: number, side: number) => readonly Item[];
}

/** Clear modules round a code. @source sources.md#iso-18004 */
const QUIET = 4;
/** Rows reach this far into the next, mm, so that no hair of paper shows between them. */
const LAP = 0.02;

/** Modules along a side with the quiet zone. */
export const withQuiet = ({ modules }: QrCode): number => modules + 2 * QUIET;

/** A text as a QR code, of error correction M (15 %). @source sources.md#iso-18004 */
export function qrCode(text: string): QrCode {
  const { data, size } = encode(text, { ecc: 'M', border: 0 });
  return {
    modules: size,
    draw: (x, y, side) => {
      const unit = side / (size + 2 * QUIET);
      return data.flatMap((row, index) =>
        runs(row).map(({ from, to }) => {
          const low = y + (size - 1 - index + QUIET) * unit - LAP;
          const left = x + (from + QUIET) * unit;
          return rectangle(
            { x: left, y: low, width: (to - from) * unit, height: unit + LAP },
            { fill: INK.black },
          );
        }),
      );
    },
  };
}

/** Dark stretches of a row. */
function runs(row: readonly boolean[]): { readonly from: number; readonly to: number }[] {
  const found: { from: number; to: number }[] = [];
  row.forEach((dark, index) => {
    const last = found.at(-1);
    if (!dark) return;
    if (last?.to === index) last.to = index + 1;
    else found.push({ from: index, to: index + 1 });
  });
  return found;
}

import type { PaperName } from '../paper.ts';

/** A sheet of labels: their size, how many, from one to the next and where the first begins. All mm. */
export interface LabelStock {
  readonly name: string;
  readonly paper: PaperName;
  readonly width: number;
  readonly height: number;
  readonly columns: number;
  readonly rows: number;
  readonly pitch: { readonly x: number; readonly y: number };
  /** From the paper's left and upper edge to the first label. */
  readonly margin: { readonly left: number; readonly top: number };
}

const inches = (value: number): number => value * 25.4;

const grid = (
  name: string,
  paper: PaperName,
  [width, height]: readonly [number, number],
  [columns, rows]: readonly [number, number],
  [pitchX, pitchY]: readonly [number, number],
  [left, top]: readonly [number, number],
): LabelStock => ({
  ...{ name, paper, width, height, columns, rows },
  ...{ pitch: { x: pitchX, y: pitchY }, margin: { left, top } },
});

const inInches = (
  name: string,
  size: readonly [number, number],
  count: readonly [number, number],
  pitch: readonly [number, number],
  margin: readonly [number, number],
): LabelStock => {
  const all = (pair: readonly [number, number]) => [inches(pair[0]), inches(pair[1])] as const;
  return grid(name, 'letter', all(size), count, all(pitch), all(margin));
};

/**
 * Common sheets of labels, named by size and by how many there are across and down. A shop's own sheet is another entry
 * of the same shape: measure it.
 *
 * @source common practice, no source; sizes from memory, so a page is held against the sheet before it is printed
 */
export const LABEL_STOCKS: readonly LabelStock[] = [
  grid('99 × 38 mm, 2 × 7', 'a4', [99.1, 38.1], [2, 7], [101.6, 38.1], [4.65, 15.15]),
  grid('63 × 38 mm, 3 × 7', 'a4', [63.5, 38.1], [3, 7], [66.04, 38.1], [7.21, 15.15]),
  grid('70 × 37 mm, 3 × 8', 'a4', [70, 37], [3, 8], [70, 37], [0, 0.5]),
  grid('99 × 68 mm, 2 × 4', 'a4', [99.1, 67.7], [2, 4], [101.6, 67.7], [4.65, 13.1]),
  grid('38 × 21 mm, 5 × 13', 'a4', [38.1, 21.2], [5, 13], [40.64, 21.2], [4.67, 10.7]),
  inInches('4 × 1 1/3 in, 2 × 7', [4, 4 / 3], [2, 7], [4.1875, 4 / 3], [0.15625, 5 / 6]),
  inInches('4 × 2 in, 2 × 5', [4, 2], [2, 5], [4.1875, 2], [0.15625, 0.5]),
  inInches('2 5/8 × 1 in, 3 × 10', [2.625, 1], [3, 10], [2.75, 1], [0.1875, 0.5]),
];

export const labelsOn = ({ columns, rows }: LabelStock): number => columns * rows;

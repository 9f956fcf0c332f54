/** Words of what is handled on the drawing, and of what an edit came to, in English. */
export const benchWords = {
  consequences: 'What it comes to',
  consequencesAbout: 'Marked: what the last step changed.',
  margin: 'Hold margin of this panel, at the least',
  length: 'Cloth from the roll',
  price: 'Price of the job',
  was: (before: string) => `was ${before}`,
  obstruction: (name: string, fromLeft: string, fromBottom: string) =>
    `${name}, ${fromLeft} from the left, ${fromBottom} from the bottom`,
  obstructionHow:
    'Drag it on the drawing, where it catches on the middle and the sides, or choose it there and press the arrow keys.',
  pull: (corner: string) => `Pull on the drawing: ${corner}`,
  costPlot: 'How the price comes about',
  left: 'Margin',
};

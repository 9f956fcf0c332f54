/** A job of rectangles, each of a size of its own, every side, diagonal and corner read. */
export function rectangles(job, count) {
  const reading = (of, value) => ({ of, entered: `${value.toFixed(1)}`, unit: 'mm' });
  const openings = Array.from({ length: count }, (_, index) => {
    const [wide, high] = [500 + 3 * index, 400 + ((7 * index) % 300)];
    const across = Math.hypot(wide, high);
    const readings = [
      ...['bottom', 'top'].map((of) => reading(of, wide)),
      ...['right', 'left'].map((of) => reading(of, high)),
      ...['rising', 'falling'].map((of) => reading(of, across)),
      ...['radiusBottomLeft', 'radiusBottomRight', 'radiusTopRight', 'radiusTopLeft'].map((of) =>
        reading(of, 40),
      ),
    ];
    const { glazing } = job.openings[0];
    return {
      ...{
        id: `W${index + 1}`,
        name: `Window ${index + 1}`,
        place: '',
        glazing,
        exit: false,
        driving: false,
      },
      ...{
        survey: { method: 'tape', diagonalsTo: 'sharp', readings },
        obstructions: [],
        choices: {},
        notes: '',
      },
    };
  });
  return { ...job, id: `bench-${count}`, name: `${count} openings`, units: 'mm', openings };
}

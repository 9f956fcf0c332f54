/** A corner of a figure: where its sides meet, and the radius that rounds it (0 sharp). */
export interface FigureCorner {
  readonly x: number;
  readonly y: number;
  readonly radius?: number;
}

export interface Sample {
  readonly x: number;
  readonly y: number;
  readonly nx: number;
  readonly ny: number;
}

/**
 * Points every `step` mm round a polygon with rounded corners, and the true normal at each (to the left of the way).
 *
 * @source elementary: tangent length r · tan(turn / 2), centre on the inner normal
 */
export function sampleFigure(corners: readonly FigureCorner[], step: number): Sample[] {
  const count = corners.length;
  const samples: Sample[] = [];
  let carried = 0;
  const run = (length: number, at: (along: number) => Sample) => {
    for (; carried < length; carried += step) samples.push(at(carried));
    carried -= length;
  };
  const side = (k: number) => {
    const [a, b] = [corners[k % count]!, corners[(k + 1) % count]!];
    const length = Math.hypot(b.x - a.x, b.y - a.y);
    return { ux: (b.x - a.x) / length, uy: (b.y - a.y) / length, length };
  };
  const bend = (k: number) => {
    const [before, after] = [side(k + count - 1), side(k)];
    const turn = Math.atan2(
      before.ux * after.uy - before.uy * after.ux,
      before.ux * after.ux + before.uy * after.uy,
    );
    const radius = corners[k % count]!.radius ?? 0;
    return { turn, radius, setback: radius * Math.tan(Math.abs(turn) / 2) };
  };
  for (let k = 0; k < count; k++) {
    const { ux, uy, length } = side(k);
    const [here, next] = [bend(k), bend(k + 1)];
    const from = corners[k]!;
    run(length - here.setback - next.setback, (along) => ({
      x: from.x + (here.setback + along) * ux,
      y: from.y + (here.setback + along) * uy,
      nx: -uy,
      ny: ux,
    }));
    if (next.radius === 0) continue;
    const way = Math.sign(next.turn);
    const corner = corners[(k + 1) % count]!;
    const centre = {
      x: corner.x - next.setback * ux - way * next.radius * uy,
      y: corner.y - next.setback * uy + way * next.radius * ux,
    };
    run(next.radius * Math.abs(next.turn), (along) => {
      const angle = Math.atan2(-way * ux, way * uy) + (way * along) / next.radius;
      return {
        x: centre.x + next.radius * Math.cos(angle),
        y: centre.y + next.radius * Math.sin(angle),
        nx: -way * Math.cos(angle),
        ny: -way * Math.sin(angle),
      };
    });
  }
  return samples;
}

/** The samples moved across the line by noise (mm). */
export const traced = (samples: readonly Sample[], noise: (i: number) => number) =>
  samples.map(({ x, y, nx, ny }, i) => {
    const off = noise(i);
    return { x: x + off * nx, y: y + off * ny };
  });

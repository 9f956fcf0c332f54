/** A point in mm. */
export interface Spot {
  readonly x: number;
  readonly y: number;
}

/** What a tool did between being put down and being lifted. */
export interface PlotStroke {
  readonly pen: number;
  readonly points: readonly Spot[];
}

/**
 * A small plotter: reads HP-GL and says where its pens went. It shares no code with the writer. Units of 0.025 mm; an
 * arc is drawn in equal chords no wider than its chord angle, or in full chords and a rest.
 */
export function plot(file: string, chords: 'equal' | 'full' = 'equal'): readonly PlotStroke[] {
  const strokes: { pen: number; points: Spot[] }[] = [];
  let pen = 0;
  let down = false;
  let at: Spot = { x: 0, y: 0 };
  const go = (to: Spot) => {
    if (down) strokes.at(-1)!.points.push({ x: to.x / 40, y: to.y / 40 });
    at = to;
  };
  for (const [code, values] of instructions(file)) {
    if (code === 'SP') pen = values[0] ?? 0;
    else if (code === 'PU') {
      down = false;
      for (let i = 0; i < values.length; i += 2) at = { x: values[i]!, y: values[i + 1]! };
    } else if (code === 'PD') {
      if (!down) {
        strokes.push({ pen, points: [{ x: at.x / 40, y: at.y / 40 }] });
        down = true;
      }
      for (let i = 0; i < values.length; i += 2) go({ x: values[i]!, y: values[i + 1]! });
    } else if (code === 'AA') {
      const [cx, cy, degrees, chord = 5] = values as [number, number, number, number?];
      if (!down) throw new Error('An arc with the pen up.');
      const radius = Math.hypot(at.x - cx, at.y - cy);
      const first = Math.atan2(at.y - cy, at.x - cx);
      const on = (angle: number): Spot => ({
        x: cx + radius * Math.cos(first + (angle * Math.PI) / 180),
        y: cy + radius * Math.sin(first + (angle * Math.PI) / 180),
      });
      const count = Math.ceil(Math.abs(degrees) / chord - 1e-9);
      const step = chords === 'equal' ? Math.abs(degrees) / count : chord;
      for (let i = 1; i < count; i++) go(on(Math.sign(degrees) * step * i));
      go(on(degrees));
    } else if (!['IN', 'PA', 'SI', 'LB'].includes(code))
      throw new Error(`The plotter does not know ${code}.`);
  }
  return strokes;
}

/** One instruction: a label runs to the character 3, everything else to its semicolon. */
const END = String.fromCharCode(3);
const INSTRUCTION = new RegExp(`(LB[^${END}]*${END})|([A-Z]{2})([^;A-Z]*);`, 'g');

function instructions(file: string): (readonly [string, readonly number[]])[] {
  const found: (readonly [string, readonly number[]])[] = [];
  for (const [, label, code, rest] of file.matchAll(INSTRUCTION)) {
    if (label !== undefined) found.push(['LB', []]);
    else {
      const values = rest!.trim() === '' ? [] : rest!.split(',').map(Number);
      if (values.some((one) => !Number.isFinite(one))) throw new Error(`${code}${rest}`);
      if (['PU', 'PD'].includes(code!) && values.some((one) => !Number.isInteger(one)))
        throw new Error(`${code} takes whole units: ${rest}`);
      found.push([code!, values]);
    }
  }
  const read = file.replace(INSTRUCTION, '').trim();
  if (read !== '') throw new Error(`The plotter cannot read “${read.slice(0, 20)}”.`);
  return found;
}

/**
 * Where the tip of a trailing blade went: it moves straight towards the axis, always `offset` behind it.
 *
 * @source sources.md#tractrix
 */
export function tipOf(strokes: readonly PlotStroke[], offset: number): readonly PlotStroke[] {
  let heading = Math.PI / 2;
  return strokes.map(({ pen, points }) => {
    let axis = points[0]!;
    let tip = { x: axis.x - offset * Math.cos(heading), y: axis.y - offset * Math.sin(heading) };
    const way: Spot[] = [tip];
    for (const to of points.slice(1)) {
      const steps = Math.max(1, Math.ceil(Math.hypot(to.x - axis.x, to.y - axis.y) / 0.02));
      for (let i = 1; i <= steps; i++) {
        const p = { x: axis.x + ((to.x - axis.x) * i) / steps, y: axis.y + ((to.y - axis.y) * i) / steps };
        const away = Math.hypot(tip.x - p.x, tip.y - p.y);
        tip = { x: p.x + (offset * (tip.x - p.x)) / away, y: p.y + (offset * (tip.y - p.y)) / away };
        if (i % 10 === 0 || i === steps) way.push(tip);
      }
      axis = to;
    }
    heading = Math.atan2(axis.y - tip.y, axis.x - tip.x);
    return { pen, points: way };
  });
}

/** Whether a point lies in a ring, by crossings. */
export function lies(p: Spot, ring: readonly Spot[]): boolean {
  let inside = false;
  ring.forEach((a, i) => {
    const b = ring[(i + 1) % ring.length]!;
    if (a.y > p.y !== b.y > p.y && p.x < a.x + ((p.y - a.y) * (b.x - a.x)) / (b.y - a.y)) inside = !inside;
  });
  return inside;
}

/**
 * Cuts a cloth as the strokes come: a ring that is closed frees what is in it. Answers with every stroke that then goes on
 * in something already free, which would have moved.
 */
export function movedBy(strokes: readonly PlotStroke[], cutter: number): readonly string[] {
  const free: { ring: readonly Spot[]; box: readonly [number, number, number, number] }[] = [];
  const moved: string[] = [];
  strokes.forEach(({ pen, points }, index) => {
    for (const { ring, box } of free)
      if (
        points.some(
          (p) =>
            p.x > box[0] && p.x < box[2] && p.y > box[1] && p.y < box[3] && lies(p, ring) && deep(p, ring),
        )
      )
        moved.push(`stroke ${index} of pen ${pen}`);
    if (pen !== cutter) return;
    const end = ringEnd(points);
    if (end === undefined) return;
    const ring = points.slice(0, end + 1);
    const [xs, ys] = [ring.map(({ x }) => x), ring.map(({ y }) => y)];
    free.push({ ring, box: [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)] });
  });
  return moved;
}

/** Where a stroke has come back to its beginning after having left it. */
function ringEnd(points: readonly Spot[]): number | undefined {
  const away = points.map((p) => Math.hypot(p.x - points[0]!.x, p.y - points[0]!.y));
  const far = away.findIndex((one) => one > 2);
  if (far < 0) return undefined;
  const back = away.findIndex((one, index) => index > far && one < 0.06);
  return back < 0 ? undefined : back;
}

/** Farther in than the width of a cut. */
const deep = (p: Spot, ring: readonly Spot[]): boolean =>
  ring.every((a, i) => fromSegment(p, a, ring[(i + 1) % ring.length]!) > 0.1);

export function fromSegment(p: Spot, a: Spot, b: Spot): number {
  const [dx, dy] = [b.x - a.x, b.y - a.y];
  const square = dx * dx + dy * dy;
  const t = square === 0 ? 0 : Math.min(1, Math.max(0, ((p.x - a.x) * dx + (p.y - a.y) * dy) / square));
  return Math.hypot(p.x - a.x - t * dx, p.y - a.y - t * dy);
}

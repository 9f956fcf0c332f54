import { getDocument, OPS } from 'pdfjs-dist/legacy/build/pdf.mjs';

export interface ReadPoint {
  readonly x: number;
  readonly y: number;
}
/** A straight or cubic part of a path: four points, in mm on the page, y up. */
export interface ReadCurve {
  readonly points: readonly [ReadPoint, ReadPoint, ReadPoint, ReadPoint];
  readonly straight: boolean;
}
export interface ReadPath {
  readonly layer: string;
  readonly curves: readonly ReadCurve[];
  /** What the path is seen through, mm; undefined for the whole page. */
  readonly window:
    | { readonly minX: number; readonly minY: number; readonly maxX: number; readonly maxY: number }
    | undefined;
}
export interface ReadPage {
  readonly width: number;
  readonly height: number;
  readonly paths: readonly ReadPath[];
  readonly text: string;
}
export interface ReadFile {
  readonly pages: readonly ReadPage[];
  readonly info: Readonly<Record<string, unknown>>;
}

const MM_PER_POINT = 25.4 / 72;
type Matrix = readonly [number, number, number, number, number, number];
const times = (m: Matrix, n: Matrix): Matrix => [
  m[0] * n[0] + m[2] * n[1],
  m[1] * n[0] + m[3] * n[1],
  m[0] * n[2] + m[2] * n[3],
  m[1] * n[2] + m[3] * n[3],
  m[0] * n[4] + m[2] * n[5] + m[4],
  m[1] * n[4] + m[3] * n[5] + m[5],
];

/** Reads a PDF with a parser that is not ours: pdf.js, from its list of drawing operators. */
export async function readPdf(bytes: Uint8Array): Promise<ReadFile> {
  const loading = getDocument({
    data: bytes.slice(),
    isEvalSupported: false,
    verbosity: 0,
    useSystemFonts: false,
  });
  const document = await loading.promise;
  const layers = await document.getOptionalContentConfig();
  const pages: ReadPage[] = [];
  for (let number = 1; number <= document.numPages; number++) {
    const page = await document.getPage(number);
    const { fnArray, argsArray } = await page.getOperatorList();
    const { items } = await page.getTextContent();
    const [minX, minY, maxX, maxY] = page.view as [number, number, number, number];
    pages.push({
      width: (maxX - minX) * MM_PER_POINT,
      height: (maxY - minY) * MM_PER_POINT,
      paths: readOperators(fnArray, argsArray, (id) => String(layers.getGroup(id)?.name ?? '')),
      text: items.map((item) => ('str' in item ? item.str : '')).join(' '),
    });
  }
  const { info } = await document.getMetadata();
  await loading.destroy();
  return { pages, info: info as Record<string, unknown> };
}

interface State {
  matrix: Matrix;
  window: ReadPath['window'];
}

function readOperators(
  operators: readonly number[],
  all: readonly unknown[],
  layerName: (id: string) => string,
): ReadPath[] {
  const paths: ReadPath[] = [];
  let state: State = { matrix: [1, 0, 0, 1, 0, 0], window: undefined };
  const saved: State[] = [];
  const layers: string[] = [];
  let curves: ReadCurve[] = [];
  operators.forEach((operator, index) => {
    const args = (all[index] ?? []) as unknown[];
    if (operator === OPS.save) saved.push({ ...state });
    else if (operator === OPS.restore) state = saved.pop()!;
    else if (operator === OPS.transform) state.matrix = times(state.matrix, args as unknown as Matrix);
    else if (operator === OPS.paintFormXObjectBegin) {
      saved.push({ ...state });
      if (args[0]) state.matrix = times(state.matrix, args[0] as Matrix);
    } else if (operator === OPS.paintFormXObjectEnd) state = saved.pop()!;
    else if (operator === OPS.beginMarkedContentProps) layers.push(layerName((args[1] as { id: string }).id));
    else if (operator === OPS.beginMarkedContent) layers.push('');
    else if (operator === OPS.endMarkedContent) layers.pop();
    else if (operator === OPS.constructPath)
      curves = pathCurves(args[0] as number[], Array.from(args[1] as ArrayLike<number>), state.matrix);
    else if (operator === OPS.clip || operator === OPS.eoClip) state.window = boxOf(curves);
    else if (PAINTS.has(operator)) paths.push({ layer: layers.at(-1) ?? '', curves, window: state.window });
  });
  return paths;
}

const PAINTS = new Set<number>([
  OPS.stroke,
  OPS.closeStroke,
  OPS.fill,
  OPS.eoFill,
  OPS.fillStroke,
  OPS.eoFillStroke,
  OPS.closeFillStroke,
  OPS.closeEOFillStroke,
]);

function pathCurves(operators: readonly number[], numbers: readonly number[], matrix: Matrix): ReadCurve[] {
  const curves: ReadCurve[] = [];
  let at = 0;
  let [start, now] = [
    { x: 0, y: 0 },
    { x: 0, y: 0 },
  ];
  const next = (): ReadPoint => {
    const [x, y] = [numbers[at++]!, numbers[at++]!];
    return {
      x: (matrix[0] * x + matrix[2] * y + matrix[4]) * MM_PER_POINT,
      y: (matrix[1] * x + matrix[3] * y + matrix[5]) * MM_PER_POINT,
    };
  };
  const line = (to: ReadPoint) => {
    curves.push({ points: [now, now, to, to], straight: true });
    now = to;
  };
  for (const operator of operators) {
    if (operator === OPS.moveTo) start = now = next();
    else if (operator === OPS.lineTo) line(next());
    else if (operator === OPS.curveTo) {
      const [a, b, to] = [next(), next(), next()];
      curves.push({ points: [now, a, b, to], straight: false });
      now = to;
    } else if (operator === OPS.closePath) {
      if (Math.hypot(now.x - start.x, now.y - start.y) > 1e-9) line(start);
    } else if (operator === OPS.rectangle) {
      const [x, y, w, h] = [numbers[at]!, numbers[at + 1]!, numbers[at + 2]!, numbers[at + 3]!];
      at += 4;
      const corners = [x, y, x + w, y, x + w, y + h, x, y + h];
      curves.push(
        ...pathCurves([OPS.moveTo, OPS.lineTo, OPS.lineTo, OPS.lineTo, OPS.closePath], corners, matrix),
      );
    } else throw new Error(`The reader does not know path operator ${operator}.`);
  }
  return curves;
}

export function boxOf(curves: readonly ReadCurve[]): NonNullable<ReadPath['window']> {
  const points = curves.flatMap((one) => one.points);
  const xs = points.map(({ x }) => x);
  const ys = points.map(({ y }) => y);
  return { minX: Math.min(...xs), minY: Math.min(...ys), maxX: Math.max(...xs), maxY: Math.max(...ys) };
}

export function pointOnCurve({ points: [a, b, c, d] }: ReadCurve, t: number): ReadPoint {
  const s = 1 - t;
  const mix = (k: 'x' | 'y') => s ** 3 * a[k] + 3 * s * s * t * b[k] + 3 * s * t * t * c[k] + t ** 3 * d[k];
  return { x: mix('x'), y: mix('y') };
}

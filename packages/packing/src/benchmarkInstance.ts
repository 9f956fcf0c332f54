import { mm } from '@panewright/quantity';
import { anyTurn } from './anyTurn.ts';
import type { Instance } from './instance.ts';

/** The plain JSON in which the open nesting benchmarks are kept; lengths in the benchmark's own unit. */
export interface BenchmarkJson {
  readonly name: string;
  readonly stripWidth: number;
  readonly pieces: readonly {
    readonly id: number | string;
    readonly demand: number;
    readonly allowedRotationsDeg: readonly number[] | 'any';
    readonly polygon: readonly (readonly number[])[];
  }[];
  /** Where no piece may lie: least x and y, greatest x and y of each. */
  readonly reserved?: readonly (readonly [number, number, number, number])[] | undefined;
}

/**
 * A benchmark as an instance: no spacing, no margin, no flip. Its length unit is read as millimetres. A ring that runs
 * clockwise is the same outline and is read the other way round; a placement means the same either way.
 */
export function benchmarkInstance(json: BenchmarkJson): Instance {
  return {
    stripWidth: mm(json.stripWidth),
    spacing: mm(0),
    margin: { side: mm(0), end: mm(0) },
    ...(json.reserved ? { reserved: json.reserved.map(placeOf) } : {}),
    pieces: json.pieces.map(({ id, demand, allowedRotationsDeg, polygon }) => ({
      id,
      demand,
      allowedRotationsDeg: allowedRotationsDeg === 'any' ? anyTurn(polygon) : allowedRotationsDeg,
      flip: false,
      polygon: anticlockwise(polygon).map((vertex) => [mm(vertex[0]!), mm(vertex[1]!)] as const),
    })),
  };
}

const placeOf = ([minX, minY, maxX, maxY]: readonly [number, number, number, number]) => ({
  minX: mm(minX),
  minY: mm(minY),
  maxX: mm(maxX),
  maxY: mm(maxY),
});

function anticlockwise(polygon: readonly (readonly number[])[]): readonly (readonly number[])[] {
  const [x0, y0] = polygon[0] ?? [0, 0];
  const twice = polygon.reduce((sum, [x, y], k) => {
    const [nextX, nextY] = polygon[(k + 1) % polygon.length]!;
    return sum + (x! - x0!) * (nextY! - y0!) - (nextX! - x0!) * (y! - y0!);
  }, 0);
  return twice < 0 ? [...polygon].reverse() : polygon;
}

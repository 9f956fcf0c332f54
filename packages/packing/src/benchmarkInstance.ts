import { mm } from '@panewright/quantity';
import type { Instance } from './instance.ts';

/** The plain JSON in which the open nesting benchmarks are kept; lengths in the benchmark's own unit. */
export interface BenchmarkJson {
  readonly name: string;
  readonly stripWidth: number;
  readonly pieces: readonly {
    readonly id: number;
    readonly demand: number;
    readonly allowedRotationsDeg: readonly number[];
    readonly polygon: readonly (readonly number[])[];
  }[];
}

/** A benchmark as an instance: no spacing, no margin, no flip. Its length unit is read as millimetres. */
export function benchmarkInstance(json: BenchmarkJson): Instance {
  return {
    stripWidth: mm(json.stripWidth),
    spacing: mm(0),
    margin: { side: mm(0), end: mm(0) },
    pieces: json.pieces.map(({ id, demand, allowedRotationsDeg, polygon }) => ({
      id,
      demand,
      allowedRotationsDeg,
      flip: false,
      polygon: polygon.map((vertex) => [mm(vertex[0]!), mm(vertex[1]!)] as const),
    })),
  };
}

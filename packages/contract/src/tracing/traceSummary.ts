import type { Measure } from '@panewright/photo';
import type { TraceReport } from './trace.ts';

/** What a trace comes to, in a few lines. */
export function traceSummary({
  outline,
  width,
  height,
  edgeSigma,
  questions,
}: TraceReport): readonly string[] {
  const mm = (value: number) => `${value.toFixed(1)} mm`;
  const size = ({ value, interval: [low, high] }: Measure) =>
    `${mm(value)} (95 %: ${mm(low)} to ${mm(high)})`;
  return [
    `${outline.segments.length} lines and arcs, ${size(width)} wide, ${size(height)} high.`,
    `Edge known to ${(1.96 * edgeSigma).toFixed(2)} mm (95 %, estimate).`,
    ...questions.map(({ say }) => say),
  ];
}

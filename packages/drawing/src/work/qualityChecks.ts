import { type Block, paragraph, space, stack } from '../block.ts';
import { fineLengthText, lengthText } from '../figures.ts';
import { CAPITAL } from '../ink.ts';
import type { FontMetrics } from '../sheet.ts';
import { tableRows } from '../table.ts';
import { widthOf } from '../text.ts';
import type { PanelWork } from './panelSteps.ts';

/**
 * How far a finished panel may be off, mm, besides the shop's own tolerance of its size. Common practice, no source: a
 * magnet's centre within 2 mm still meets its partner, an edge within 1 mm looks even.
 */
export const TOLERANCE = { holdPoint: 2, band: 1, stitchInset: 1, stitchLength: 0.5 } as const;

/** What is checked, and what it should be with how far it may differ. */
type Check = readonly [what: string, value: string];

/** What is measured on each finished panel: what it should be, by how much it may differ, and room for what it is. */
export function qualityChecks(work: PanelWork, width: number): readonly Block[] {
  const { input, words, points } = work;
  const { metrics } = input.options;
  const checks = [...lengths(work), ...(points > 0 ? holdChecks(work) : [])];
  const names = [words.check.nominal(), words.check.measured()] as const;
  const title = paragraph(words.check.title(), width, metrics, { capital: CAPITAL.small, face: 'bold' });
  return [space(1), stack([...title, ...tables(checks, names, width, metrics)])];
}

/** The checks side by side in one table, or in as many as leave every word whole. */
function tables(
  checks: readonly Check[],
  names: readonly [string, string],
  width: number,
  metrics: FontMetrics,
): readonly Block[] {
  for (let count = 1; ; count++) {
    const most = Math.ceil(checks.length / count);
    const parts = Array.from({ length: count }, (_, at) => checks.slice(at * most, (at + 1) * most)).map(
      (part) => [
        { title: '', values: ['', ''], needs: widest('', names, metrics) },
        ...part.map(([title, value]) => ({
          ...{ title, values: [value, ''], needs: widest(title, [value], metrics) },
        })),
      ],
    );
    const needed = (part: (typeof parts)[number]) => part.reduce((sum, { needs }) => sum + needs, 0);
    if (most > 1 && parts.some((part) => needed(part) > width)) continue;
    return parts.flatMap((part) => {
      const spare = Math.max(0, width - needed(part)) / part.length;
      return tableRows(
        part.map(({ title, needs }) => ({ title, width: needs + spare })),
        names.map((name, row) => [name, ...part.slice(1).map(({ values }) => values[row]!)]),
        metrics,
        { close: true, capital: CAPITAL.least },
      );
    });
  }
}

/** Room for a title's longest word and for each value whole, and the gap after it, mm. */
const widest = (title: string, values: readonly string[], metrics: FontMetrics): number =>
  GAP +
  Math.max(
    ...title.split(' ').map((word) => widthOf(word, metrics, { capital: CAPITAL.least, face: 'bold' })),
    ...values
      .flatMap((value) => value.split('\n'))
      .map((value) => widthOf(value, metrics, { capital: CAPITAL.least })),
  );

const GAP = 3.2;

function holdChecks({ words, panel, hold, named, points }: PanelWork): readonly Check[] {
  const all = (what: string): Check => [what, words.check.all(points)];
  if (named.fastener !== undefined) return [all(words.check.fasteners())];
  const poles =
    hold?.poles === 'keyed'
      ? words.check.marks()
      : words.check.poles(words.install.pole(panel.choices.hold.poleOut));
  return [all(words.check.pocketsClosed()), all(poles)];
}

function lengths({ input, words, panel, hold }: PanelWork): readonly Check[] {
  const { units, language } = input.options;
  const { habits } = input.catalogue;
  const row = (what: string, length: number, tolerance: number, fine = false): Check => [
    what,
    `${fine ? fineLengthText(length, units, language) : lengthText(length, units)}\n± ${fineLengthText(tolerance, units, language)}`,
  ];
  const far = farthest(hold?.points.map(({ number, centre }) => ({ number, ...centre })) ?? []);
  const sewn = panel.stitch.length > 0;
  return [
    row(words.check.width(), panel.finishedWidth.value, habits.patternTolerance),
    row(words.check.height(), panel.finishedHeight.value, habits.patternTolerance),
    ...(far === undefined
      ? []
      : [row(words.check.holdPoints(far.from, far.to), far.distance, TOLERANCE.holdPoint)]),
    ...(panel.band === null ? [] : [row(words.check.band(), panel.bandWidth, TOLERANCE.band, true)]),
    ...(sewn
      ? [
          row(words.check.stitchInset(), habits.stitchInset, TOLERANCE.stitchInset, true),
          row(words.check.stitchLength(), habits.stitchLength, TOLERANCE.stitchLength, true),
        ]
      : []),
  ];
}

/** The two hold points farthest apart: what shows a panel out of square. */
function farthest(points: readonly { readonly number: number; readonly x: number; readonly y: number }[]) {
  let far: { readonly from: number; readonly to: number; readonly distance: number } | undefined;
  for (const a of points)
    for (const b of points) {
      const distance = Math.hypot(a.x - b.x, a.y - b.y);
      if (a.number < b.number && distance > (far?.distance ?? 0) + 1e-9)
        far = { from: a.number, to: b.number, distance };
    }
  return far;
}

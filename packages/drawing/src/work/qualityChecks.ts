import { type Block, heading, space } from '../block.ts';
import { fineLengthText, lengthText } from '../figures.ts';
import { tableRows } from '../table.ts';
import type { PanelWork } from './panelSteps.ts';

/**
 * How far a finished panel may be off, mm, besides the shop's own tolerance of its size. Common practice, no source: a
 * magnet's centre within 2 mm still meets its partner, an edge within 1 mm looks even.
 */
export const TOLERANCE = { holdPoint: 2, band: 1, stitchInset: 1, stitchLength: 0.5 } as const;

/** What is measured on each finished panel: what it should be, by how much it may differ, and room for what it is. */
export function qualityChecks(work: PanelWork, width: number): readonly Block[] {
  const { input, words, points } = work;
  const { metrics } = input.options;
  const columns = [
    { title: words.check.what(), width: width * 0.38 },
    { title: words.check.nominal(), width: width * 0.2 },
    { title: words.check.within(), width: width * 0.18 },
    { title: words.check.measured(), width: width * 0.24 },
  ];
  const counts = points > 0 ? holdChecks(work) : [];
  const rows = [...lengths(work), ...counts];
  return [
    space(3),
    { ...heading(words.check.title(), width, metrics), keepWithNext: true },
    ...tableRows(columns, rows, metrics),
  ];
}

function holdChecks({ words, panel, hold, named, points }: PanelWork): readonly (readonly string[])[] {
  const all = (what: string) => [what, words.check.all(points), '', ''];
  if (named.fastener !== undefined) return [all(words.check.fasteners())];
  const poles =
    hold?.poles === 'keyed'
      ? words.check.marks()
      : words.check.poles(words.install.pole(panel.choices.hold.poleOut));
  return [all(words.check.pocketsClosed()), all(poles)];
}

function lengths({ input, words, panel, hold }: PanelWork): readonly (readonly string[])[] {
  const { units, language } = input.options;
  const { habits } = input.catalogue;
  const within = (tolerance: number) => `± ${fineLengthText(tolerance, units, language)}`;
  const row = (what: string, length: number, tolerance: number, fine = false) => [
    ...[
      what,
      fine ? fineLengthText(length, units, language) : lengthText(length, units),
      within(tolerance),
      '',
    ],
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

import type { Job } from '../document/job.ts';
import type { Find, Finding } from '../plan/finding.ts';
import type { HoldGap } from '../plan/holdDetail.ts';
import type { PanelPlan } from '../plan/plan.ts';
import type { CarriedByHand } from './carriedByHand.ts';
import type { LayoutProblem } from './layout.ts';
import { runsOf } from './runs.ts';

/** Says what was set by hand and could not be followed, and gaps it left that are wider than the shop lets pass. */
export function handFindings(
  { of }: CarriedByHand,
  problems: readonly LayoutProblem[],
  gaps: readonly HoldGap[],
  panel: PanelPlan,
  find: Find,
): void {
  if (of === null) return;
  for (const problem of problems) reportProblem(problem, of, panel, find);
  const limit = Math.max(panel.choices.hold.spacing, panel.choices.hold.upTo);
  for (const { reason, length, from, to } of gaps)
    if (reason === 'overLimit')
      find({
        severity: 'doubt',
        code: 'HAND_GAP_WIDE',
        where: { opening: of, pattern: panel.pattern, point: `${from} ${to}` },
        numbers: { gap: length, limit },
      });
}

function reportProblem(problem: LayoutProblem, opening: string, panel: PanelPlan, find: Find): void {
  const severity = 'doubt';
  switch (problem.code) {
    case 'HAND_EDGE_UNKNOWN': {
      const known = [...new Set(runsOf(panel).flatMap(({ sides }) => sides.map(({ name }) => name)))].join(
        ' ',
      );
      const numbers = { edge: problem.on, known };
      find({ severity, code: problem.code, where: { opening, edge: problem.on }, numbers });
      return;
    }
    case 'HAND_POINT_UNKNOWN': {
      const { on, index, points } = problem;
      find({ severity, code: problem.code, where: { opening, edge: on }, numbers: { index, points } });
      return;
    }
    case 'HAND_POINT_OFF_EDGE': {
      const { on, by } = problem;
      const index = Math.abs(problem.index);
      find({ severity, code: problem.code, where: { opening, edge: on }, numbers: { index, by } });
      return;
    }
    // Zones and crowding are told of every point, whoever set it.
    case 'POINT_ON_ZONE':
    case 'POINTS_CROWDED':
  }
}

/** Points set by hand on openings the job no longer has: kept, and followed again when the opening comes back. */
export const handGone = ({ heldByHand = [], openings }: Job): readonly Finding[] =>
  heldByHand
    .filter((entry) => !openings.some(({ id }) => id === entry.opening))
    .map(({ opening, placed }) => ({
      severity: 'note',
      code: 'HAND_OPENING_UNKNOWN',
      where: {},
      numbers: { opening, points: placed.length },
    }));

import type { NetworkAdjustment, PlannedOutline } from '@panewright/survey';
import type { Catalogue } from '../document/catalogue.ts';
import type { MarksSurvey, Opening } from '../document/job.ts';
import type { Find } from '../plan/finding.ts';

/** A point farther off its run than this many standard deviations is worth a word. */
const OFF_RUN = 3.3;

/** What the tapes say of one another: the one that is wrong, what nothing checks, where they meet too flat. */
export function reportNetwork(
  { id }: Opening,
  survey: MarksSurvey,
  network: NetworkAdjustment,
  { habits }: Catalogue,
  find: Find,
): void {
  const where = { opening: id };
  if (network.redundancy === 0) find({ severity: 'doubt', code: 'NO_CHECK_TAPE', where, numbers: {} });
  reportSuspects(where, survey, network, find);
  for (const { name, angle, ellipse } of network.weak)
    find({
      severity: 'doubt',
      code: 'WEAK_GEOMETRY',
      where: { ...where, point: name },
      numbers: { point: name, degrees: (angle * 180) / Math.PI, across: ellipse.major },
    });
  const { next } = network;
  const wanted = network.redundancy === 0 || network.weak.length > 0;
  if (next && (wanted || next.worstNow > habits.patternTolerance / 2))
    find({
      severity: 'note',
      code: 'NEXT_TAPE',
      where,
      numbers: { from: next.from, to: next.to, now: next.worstNow, after: next.worstThen },
    });
}

function reportSuspects(
  where: { readonly opening: string },
  survey: MarksSurvey,
  { suspects, test, distances, redundancy }: NetworkAdjustment,
  find: Find,
): void {
  const [first, second] = suspects;
  const called = ({ from, to }: { readonly from: string; readonly to: string }) => `tape:${from}:${to}`;
  if (first)
    find({
      severity: 'doubt',
      code: 'READING_SUSPECT',
      where: { ...where, item: called(first) },
      numbers: {
        of: called(first),
        entered: survey.distances[first.index]!.entered,
        corrected: first.correctedReading,
        error: first.impliedError,
        cause: first.cause,
        confidence: first.confidence,
        ...(second
          ? {
              orOf: called(second),
              orEntered: survey.distances[second.index]!.entered,
              orCorrected: second.correctedReading,
            }
          : {}),
      },
    });
  else if (test && !test.passes)
    find({
      severity: 'doubt',
      code: 'READINGS_DISAGREE',
      where,
      numbers: {
        misclosure: Math.sqrt(distances.reduce((sum, { residual }) => sum + residual ** 2, 0) / redundancy),
      },
    });
}

/** Points that do not lie on the run they were taken on. */
export function reportRuns({ id }: Opening, { residuals }: PlannedOutline, find: Find): void {
  for (const { run, name, residual, standardised } of residuals)
    if (standardised !== undefined && Math.abs(standardised) > OFF_RUN)
      find({
        severity: 'doubt',
        code: 'POINT_OFF_RUN',
        where: { opening: id, point: name },
        numbers: { point: name, run: run + 1, off: residual },
      });
}

import { Link } from 'wouter';
import type { Plan } from '../contract.ts';
import { useMoneySign, useUnits } from '../fields/useUnits.ts';
import { STAGES, type Stage } from '../findings/stageOf.ts';
import { useFindings } from '../findings/useFindings.ts';
import { useJob, usePlan, useWork } from '../job/work.ts';
import { showArea, showMinutes, showMoney, showRun } from '../text/show.ts';
import { useWords } from '../text/useWords.ts';
import { useCurrent } from './useCurrent.ts';

/** Stages that are worked out after the lay. */
const LATE: readonly Stage[] = ['cutting', 'takeOff', 'price'];

/** The flow of the job as a row of stations, each with what it came to; always in view. */
export function StageNav({ stage }: { readonly stage: string }) {
  const w = useWords();
  const { id } = useWork();
  const { opening } = useCurrent();
  const working = usePlan((state) => state.working);
  const results = useResults();
  return (
    <nav className="stations" aria-label={w.stages.label}>
      <ol>
        {STAGES.map((one) => {
          const waits = working && LATE.includes(one);
          return (
            <li key={one}>
              <Link
                href={`/jobs/${id}/${one}${opening ? `/${opening.id}` : ''}`}
                aria-current={one === stage ? 'page' : undefined}
                className={`station${waits ? ' station-waits' : ''}`}
              >
                <span className="station-name">{w.stages[one]}</span>
                <span className={`station-result${one === 'findings' && results.needs ? ' needs' : ''}`}>
                  {waits ? w.stages.working : results.of[one]}
                </span>
              </Link>
            </li>
          );
        })}
      </ol>
    </nav>
  );
}

/** What each stage came to, in a word or two. */
function useResults(): { readonly of: Readonly<Record<Stage, string>>; readonly needs: boolean } {
  const w = useWords();
  const units = useUnits();
  const sign = useMoneySign();
  const kind = useJob((state) => state.document.site.kind);
  const openings = useJob((state) => state.document.openings);
  const plan = usePlan((state) => state.plan);
  const late = usePlan((state) => state.late);
  const needs = useFindings().filter((one) => one.severity === 'stop' || one.severity === 'doubt').length;
  const measured = usePlan((state) => state.openings).filter((one) => one.shape).length;
  const r = w.stages.result;
  const none = measured === 0;
  return {
    needs: needs > 0,
    of: {
      job: w.job.kinds[kind],
      openings: r.openings(measured, openings.length),
      patterns: none || !plan ? '' : r.patterns(plan.patterns.length, measured),
      panels: none || !plan ? '' : r.panels(showArea(totalArea(plan), units)),
      hold: none || !plan ? '' : r.hold(totalPoints(plan)),
      cutting: late?.cutting && !none ? showRun(totalLength(late.cutting), units) : '',
      takeOff: late?.takeOff && !none ? showMinutes(late.takeOff.minutes.value) : '',
      price: late?.price && !none ? showMoney(late.price.price.value, sign) : '',
      sheets: none ? '' : r.sheets,
      findings: r.findings(needs),
    },
  };
}

const membersOf = (plan: Plan, pattern: string) =>
  plan.patterns.find((one) => one.pattern === pattern)?.members.length ?? 0;

export const totalArea = (plan: Plan | null): number =>
  plan?.panels.reduce((sum, panel) => sum + panel.area.value * membersOf(plan, panel.pattern), 0) ?? 0;

export const totalPoints = (plan: Plan | null): number =>
  plan?.hold.reduce((sum, hold) => sum + hold.points.length * membersOf(plan, hold.pattern), 0) ?? 0;

export const totalLength = (cutting: NonNullable<Plan['cutting']>): number =>
  cutting.lays.reduce((sum, lay) => sum + (lay.offcut ? 0 : lay.length.value), 0);

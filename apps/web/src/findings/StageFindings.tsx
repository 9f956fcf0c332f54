import type { FindingCode } from '../contract.ts';
import { usePlan } from '../job/work.ts';
import { FindingItem } from './FindingItem.tsx';
import { bySeverity, type Stage, stageOf } from './stageOf.ts';
import { useFindings } from './useFindings.ts';

interface Props {
  readonly stage: Stage;
  /** Only those of this opening and of the pattern it shares. */
  readonly opening?: string;
  /** `needs`: only what needs the maker; `rest`: only the others. Both where left out. */
  readonly only?: 'needs' | 'rest';
  /** Those that stand elsewhere on the stage. */
  readonly without?: readonly FindingCode[];
}

/** Findings at the place where they arise. */
export function StageFindings({ stage, opening, only, without }: Props) {
  const findings = useFindings();
  const patterns = usePlan((state) => state.plan?.patterns);
  const pattern = patterns?.find((one) => one.members.some((member) => member.opening === opening))?.pattern;
  const here = findings.filter(({ where, ...one }) => {
    if (stageOf({ where, ...one }) !== stage || without?.includes(one.code)) return false;
    const needs = one.severity === 'stop' || one.severity === 'doubt';
    if (only && needs !== (only === 'needs')) return false;
    if (opening === undefined) return true;
    if (where.opening !== undefined) return where.opening === opening;
    return where.pattern === undefined || where.pattern === pattern;
  });
  if (here.length === 0) return null;
  return (
    <ul className="findings">
      {bySeverity(here).map((finding, index) => (
        // Findings have no id; the list is made anew with each plan.
        <li key={index}>
          <FindingItem finding={finding} />
        </li>
      ))}
    </ul>
  );
}

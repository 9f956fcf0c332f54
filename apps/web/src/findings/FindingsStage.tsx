import { Link } from 'wouter';
import type { Finding } from '../contract.ts';
import { useJob, usePlan, useWork } from '../job/work.ts';
import { useWords } from '../text/useWords.ts';
import { FindingItem } from './FindingItem.tsx';
import { bySeverity, stageOf } from './stageOf.ts';
import { useFindings } from './useFindings.ts';

const KINDS = ['stop', 'doubt', 'caution', 'note'] as const;

/** Everything the job has to say, gathered: first what stops it, last what is good to know. */
export function FindingsStage() {
  const w = useWords();
  const { id } = useWork();
  const findings = bySeverity(useFindings());
  const openings = useJob((state) => state.document.openings);
  const first = openings[0]?.id;
  const patterns = usePlan((state) => state.plan?.patterns);
  const memberOf = ({ where }: Finding) =>
    patterns?.find((one) => one.pattern === where.pattern)?.members[0]?.opening;
  return (
    <div className="stage stage-single">
      <h2>{w.findings.title}</h2>
      {findings.length === 0 ? <p className="empty">{w.findings.none}</p> : null}
      {KINDS.map((kind) => {
        const some = findings.filter((one) => one.severity === kind);
        if (some.length === 0) return null;
        return (
          <section key={kind}>
            <h3>
              {w.findings.severity[kind]}: {w.findings.about[kind]}
            </h3>
            <ul className="findings">
              {some.map((finding, index) => {
                const stage = stageOf(finding);
                const opening = finding.where.opening ?? memberOf(finding) ?? first;
                return (
                  // Findings have no id; the list is made anew with each plan.
                  <li key={index}>
                    <FindingItem finding={finding} />
                    <Link href={`/jobs/${id}/${stage}${opening ? `/${opening}` : ''}`}>
                      {w.findings.go(
                        finding.where.opening
                          ? `${w.stages[stage]}, ${finding.where.opening}`
                          : w.stages[stage],
                      )}
                    </Link>
                  </li>
                );
              })}
            </ul>
          </section>
        );
      })}
    </div>
  );
}

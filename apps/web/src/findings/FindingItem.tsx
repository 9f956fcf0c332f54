import { type Finding, sayFinding } from '../contract.ts';
import { useSpoken, useWords } from '../text/useWords.ts';
import { useShow } from './useFindings.ts';

/** One finding: what it is, why it matters, what would do. */
export function FindingItem({ finding }: { readonly finding: Finding }) {
  const w = useWords();
  const say = sayFinding(
    finding,
    useShow(),
    useSpoken((state) => state.messages?.findings),
  );
  const needsYou = finding.severity === 'stop' || finding.severity === 'doubt';
  return (
    <div className={`finding finding-${finding.severity}`}>
      <p className="finding-what">
        <b className={needsYou ? 'needs' : undefined}>{w.findings.severity[finding.severity]}.</b> {say.what}
      </p>
      {say.why || say.do ? (
        <p className="finding-more">
          {say.why} {say.do ? <em>{say.do}</em> : null}
        </p>
      ) : null}
    </div>
  );
}

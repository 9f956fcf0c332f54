import type { ReactNode } from 'react';
import { useStore } from 'zustand';
import { useMoneySign, useUnits } from '../fields/useUnits.ts';
import type { Stop } from '../job/lastStop.ts';
import { usePlan, useWork } from '../job/work.ts';
import { showMoney, showNumber, showRun } from '../text/show.ts';
import { useWords } from '../text/useWords.ts';
import { totalLength } from './StageNav.tsx';

/** Beside the drawing: margin, lay and price as they now are, with what they were before the last step where it changed them. */
export function Consequences({ opening }: { readonly opening: string }) {
  const w = useWords();
  const units = useUnits();
  const sign = useMoneySign();
  const before = useStore(useWork().stops.store, (state) => state.before);
  const plan = usePlan((state) => state.plan);
  const late = usePlan((state) => state.late);
  const working = usePlan((state) => state.working);
  if (!plan || !late?.price) return null;
  const textsOf = ({ plan: one, late: then }: Stop) => [
    marginOf(one, opening),
    then.cutting ? showRun(totalLength(then.cutting), units) : '—',
    then.price ? showMoney(then.price.price.value, sign) : '—',
  ];
  const [now, was] = [textsOf({ plan, late }), before && textsOf(before)];
  return (
    <section className="consequences" aria-label={w.bench.consequences}>
      <h3>{w.bench.consequences}</h3>
      <dl className="figures">
        {[w.bench.margin, w.bench.length, w.bench.price].map((label, index) => (
          <Row key={label} label={label} was={was && was[index] !== now[index] ? was[index]! : null}>
            {working && index > 0 ? w.stages.working : now[index]}
          </Row>
        ))}
      </dl>
      {was ? <p className="about">{w.bench.consequencesAbout}</p> : null}
    </section>
  );
}

const marginOf = (plan: Stop['plan'], opening: string): string => {
  const margin = plan.hold.flatMap((one) => one.openings).find((one) => one.opening === opening)?.margin;
  return margin ? showNumber(margin.low, 2) : '—';
};

interface RowProps {
  readonly label: string;
  readonly was: string | null;
  readonly children: ReactNode;
}

function Row({ label, was, children }: RowProps) {
  const w = useWords();
  return (
    <div className={was === null ? undefined : 'changed'}>
      <dt>{label}</dt>
      <dd>
        {was === null ? null : <small>{w.bench.was(was)}</small>} {children}
      </dd>
    </div>
  );
}

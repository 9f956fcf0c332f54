import { useEffect, useState } from 'react';
import { useMoneySign, useUnits } from '../fields/useUnits.ts';
import { useJob, usePlan } from '../job/work.ts';
import { showMoney, showRun } from '../text/show.ts';
import { useWords } from '../text/useWords.ts';
import { totalLength, totalPoints } from './StageNav.tsx';

/** Told to those who hear the page: what an edit came to, once it has all been worked out. */
export function LiveWords() {
  const w = useWords();
  const units = useUnits();
  const sign = useMoneySign();
  const plan = usePlan((state) => state.plan);
  const late = usePlan((state) => state.late);
  const working = usePlan((state) => state.working);
  const fault = usePlan((state) => state.fault);
  const stale = useJob((state) => Object.keys(state.refused).length > 0);
  const [said, say] = useState('');
  const sentence = stale
    ? w.live.stale
    : !working && plan && late?.cutting && late.price
      ? w.live.worked(
          plan.openings.length,
          totalPoints(plan),
          showRun(totalLength(late.cutting), units),
          showMoney(late.price.total.value, sign),
        )
      : said;
  useEffect(() => {
    const timer = setTimeout(() => say(sentence), 600);
    return () => clearTimeout(timer);
  }, [sentence]);
  return (
    <>
      {fault ? (
        <p className="fault" role="alert">
          <strong className="needs">{w.app.fault}</strong> {w.app.faultDo}{' '}
          <span className="about">{fault}</span>
        </p>
      ) : null}
      <p className="only-heard" role="status">
        {said}
      </p>
    </>
  );
}

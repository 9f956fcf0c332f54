import { useUnits } from '../fields/useUnits.ts';
import { showWind, useWindUnit } from '../fields/wind.ts';
import { showNumber } from '../text/show.ts';
import { useWords } from '../text/useWords.ts';
import type { HoldView } from './useHoldView.ts';

/** The answer in three sentences: does the panel stay up, until which wind, and how far this is to be trusted. */
export function WholeMargin({ view }: { readonly view: HoldView }) {
  const w = useWords();
  const t = w.holding.whole;
  const unit = useWindUnit(useUnits());
  const { margin } = view.held.own;
  if (!margin || !view.winds) return <p className="about">{w.hold.pullRefused}</p>;
  const { low, high } = view.winds.letsGo;
  const weak = margin.low < view.asked;
  return (
    <section className={`hold-answer${weak ? ' hold-answer-weak' : ''}`}>
      <h2 className="minor">{t.title}</h2>
      <p>
        <b className={weak ? 'needs' : undefined}>
          {t.holds(
            showNumber(margin.low, 2),
            showNumber(margin.high, 2),
            showWind(view.held.load.wind, unit),
          )}
        </b>{' '}
        {high === 0 ? t.never : t.letsGo(showWind(low ?? 0, unit), showWind(high ?? 0, unit))}{' '}
        {t.asked(showNumber(view.asked, 1))}
      </p>
      {low === 0 && view.held.own.by !== 'fastener' ? <p className="about">{t.neverPoints}</p> : null}
      <p className="about">
        {t.law} {t.estimate}
      </p>
    </section>
  );
}

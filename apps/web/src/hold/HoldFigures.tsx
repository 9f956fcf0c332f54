import type { HoldOpening } from '../contract.ts';
import { FigureValue } from '../fields/FigureValue.tsx';
import { useUnits } from '../fields/useUnits.ts';
import { showHeat, useHeatUnit } from '../fields/wind.ts';
import { showForce, showLength } from '../text/show.ts';
import { useWords } from '../text/useWords.ts';

/** Gap, pull, margin, weight, heat and poles as figures. Pull and margin are estimates and say so. */
export function HoldFigures({ hold }: { readonly hold: HoldOpening }) {
  const w = useWords();
  const units = useUnits();
  const heat = useHeatUnit(units);
  const { pull, margin, poles } = hold;
  return (
    <section>
      <h3>{w.hold.stack}</h3>
      <dl className="figures">
        <div>
          <dt>{w.hold.gapSum}</dt>
          <dd>
            <FigureValue figure={hold.gap} text={showLength(hold.gap.value, units, 32)} />
          </dd>
        </div>
        {pull ? <Pull pull={pull} /> : null}
        {margin ? (
          <>
            <div>
              <dt>{w.hold.margin}</dt>
              <dd>
                <FigureValue figure={margin.value} />
              </dd>
            </div>
            <div>
              <dt>{w.hold.weight}</dt>
              <dd>{showForce(margin.weight, units)}</dd>
            </div>
          </>
        ) : null}
        <div>
          <dt>{w.hold.heat}</dt>
          <dd>
            {hold.heatLimit === null ? (
              w.hold.heatUnknown
            ) : (
              <>
                {showHeat(Math.round(hold.heatLimit), heat)}{' '}
                <small className="estimate">{w.hold.estimate}</small>
              </>
            )}
          </dd>
        </div>
      </dl>
      <p className="about">
        {pull
          ? w.hold.pullAbout(showForce(pull.low, units), showForce(pull.high, units))
          : w.hold.pullRefused}
      </p>
      <h3>{w.hold.polesTitle}</h3>
      <p>{w.hold.polesAbout(w.hold.poles[poles.panelOut], w.hold.poles[poles.insideOut])}</p>
    </section>
  );
}

function Pull({ pull }: { readonly pull: NonNullable<HoldOpening['pull']> }) {
  const w = useWords();
  const units = useUnits();
  return (
    <>
      <div>
        <dt>{w.hold.pull}</dt>
        <dd>
          <FigureValue figure={pull.working} />
        </dd>
      </div>
      <div>
        <dt>{w.hold.ideal}</dt>
        <dd>{showForce(pull.ideal, units)}</dd>
      </div>
      <div>
        <dt>{w.hold.touching}</dt>
        <dd>{showForce(pull.touching, units)}</dd>
      </div>
    </>
  );
}

import { type HoldOpening, type HoldPlan, type PanelHeld, sayWrongWay } from '../contract.ts';
import { FigureValue } from '../fields/FigureValue.tsx';
import { useUnits } from '../fields/useUnits.ts';
import { showHeat, useHeatUnit } from '../fields/wind.ts';
import { useShow } from '../findings/useFindings.ts';
import { showForce, showLength } from '../text/show.ts';
import { spoken, useWords } from '../text/useWords.ts';

/** Gap, pull, margin, weight, heat and poles as figures. Pull and margin are estimates and say so. */
export function HoldFigures({ held: { own: hold, hold: plan } }: { readonly held: PanelHeld }) {
  const w = useWords();
  const units = useUnits();
  const heat = useHeatUnit(units);
  const { pull, margin } = hold;
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
      {hold.by === 'magnets' ? <Poles hold={hold} plan={plan} /> : null}
    </section>
  );
}

/** One pole out everywhere; or keyed, with every way the panel could still be put on wrongly. */
function Poles({ hold: { poles }, plan }: { readonly hold: HoldOpening; readonly plan: HoldPlan }) {
  const w = useWords();
  const show = useShow();
  const { messages } = spoken();
  const about =
    plan.poles === 'keyed'
      ? w.hold.polesKeyed(plan.wrongWays?.length ?? 0)
      : w.hold.polesAbout(w.hold.poles[poles.panelOut], w.hold.poles[poles.insideOut]);
  return (
    <>
      <h3>{w.hold.polesTitle}</h3>
      <p>{about}</p>
      {plan.wrongWays?.length ? (
        <ul className="about">
          {plan.wrongWays.map((way, k) => (
            // Ways have no name; their order is that of the plan.
            <li key={k}>{sayWrongWay(way, plan.points.length, show, messages)}</li>
          ))}
        </ul>
      ) : null}
    </>
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

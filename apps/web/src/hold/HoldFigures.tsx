import type { HoldOpening } from '../contract.ts';
import { FigureValue } from '../fields/FigureValue.tsx';
import { useUnits } from '../fields/useUnits.ts';
import { useCatalogue } from '../job/work.ts';
import { showForce, showLength, showSpeed } from '../text/show.ts';
import { useWords } from '../text/useWords.ts';
import { StackDrawing } from './StackDrawing.tsx';

/** The stack, the pull over it, the margin, the poles. Pull and margin are estimates and say so. */
export function HoldFigures({ hold }: { readonly hold: HoldOpening }) {
  const w = useWords();
  const units = useUnits();
  const { pull, margin, poles } = hold;
  return (
    <section>
      <h3>{w.hold.stack}</h3>
      <StackDrawing hold={hold} />
      <dl className="figures">
        <div>
          <dt>{w.hold.gapSum}</dt>
          <dd>
            <FigureValue figure={hold.gap} text={showLength(hold.gap.value, units, 32)} />
          </dd>
        </div>
        {pull ? (
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
        ) : null}
      </dl>
      <p className="about">
        {pull
          ? w.hold.pullAbout(showForce(pull.low, units), showForce(pull.high, units))
          : w.hold.pullRefused}
      </p>
      {margin ? <Margin margin={margin} /> : null}
      <Creep hold={hold} />
      <dl className="figures">
        <div>
          <dt>{w.hold.heat}</dt>
          <dd>
            {hold.heatLimit === null ? (
              w.hold.heatUnknown
            ) : (
              <>
                {hold.heatLimit.toFixed(0)} °C <small className="estimate">{w.hold.estimate}</small>
              </>
            )}
          </dd>
        </div>
      </dl>
      <h3>{w.hold.polesTitle}</h3>
      <p>{w.hold.polesAbout(w.hold.poles[poles.panelOut], w.hold.poles[poles.insideOut])}</p>
    </section>
  );
}

/** The point that gives first by the mechanics of the edge; worth saying where it does before the whole panel. */
function Creep({ hold }: { readonly hold: HoldOpening }) {
  const w = useWords();
  const units = useUnits();
  const first = hold.byPoint?.find(({ point }) => point === hold.letsGo?.weakest);
  const { low, high } = hold.letsGo ?? { low: null, high: null };
  if (!first || low === null || high === null || low >= (hold.margin?.letsGoAt ?? 0)) return null;
  return (
    <p className="about">
      {w.hold.creep(
        String(first.point),
        w.hold.creepMode[first.mode],
        showSpeed(low, units),
        showSpeed(high, units),
      )}
    </p>
  );
}

function Margin({ margin }: { readonly margin: NonNullable<HoldOpening['margin']> }) {
  const w = useWords();
  const units = useUnits();
  const asked = useCatalogue((catalogue) => catalogue.habits.windMargin);
  return (
    <>
      <dl className="figures">
        <div>
          <dt>{w.hold.margin}</dt>
          <dd>
            <FigureValue figure={margin.value} />
          </dd>
        </div>
        <div>
          <dt>{w.hold.letsGo}</dt>
          <dd>
            {showSpeed(margin.letsGoAt, units)} <small className="estimate">{w.hold.estimate}</small>
          </dd>
        </div>
        <div>
          <dt>{w.hold.weight}</dt>
          <dd>{showForce(margin.weight, units)}</dd>
        </div>
      </dl>
      <p className="about">
        {w.hold.marginAbout(
          margin.low.toFixed(2),
          margin.high.toFixed(2),
          w.hold.mode[margin.mode],
          asked.toFixed(1),
        )}
      </p>
    </>
  );
}

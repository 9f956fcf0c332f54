import { memo, useDeferredValue, useState } from 'react';
import { metrePerSecond, type WindMargin, windSpeed, windSpeedIn } from '../contract.ts';
import { useUnits } from '../fields/useUnits.ts';
import { showWind, useWindUnit, type WindUnit } from '../fields/wind.ts';
import { showNumber } from '../text/show.ts';
import { useWords } from '../text/useWords.ts';
import type { HoldView } from './useHoldView.ts';

const BOX = { width: 560, height: 260, left: 36, right: 12, top: 16, bottom: 34 } as const;
/** Margins above this are drawn at the upper rim. */
const MOST = 4;

interface Scales {
  readonly x: (wind: number) => number;
  readonly y: (margin: number) => number;
  readonly most: number;
}

function scalesOf(winds: readonly number[]): Scales {
  const most = winds.at(-1) ?? 1;
  const [wide, high] = [BOX.width - BOX.left - BOX.right, BOX.height - BOX.top - BOX.bottom];
  return {
    x: (wind) => BOX.left + (wind / most) * wide,
    y: (margin) => BOX.top + (1 - Math.min(Math.max(margin, 0), MOST) / MOST) * high,
    most,
  };
}

type At = readonly [number, number];
const path = (points: readonly At[]): string =>
  points.map(([x, y], k) => `${k === 0 ? 'M' : 'L'}${x.toFixed(1)} ${y.toFixed(1)}`).join('');

interface Props extends Pick<HoldView, 'winds' | 'asked'> {
  /** The wind the job is to stand, m/s. */
  readonly here: number;
}

/**
 * The curves right after the rest: the panel, its points and their figures do not wait for them. The line of the wind
 * asked for moves with the rest.
 */
export function LateWindPlot({ view: { winds, asked, held } }: { readonly view: HoldView }) {
  return <WindPlot winds={useDeferredValue(winds)} asked={asked} here={held.load.wind} />;
}

/** Margin of the panel and of its weakest point against wind: two bands, with what is asked and where each lets go. */
const WindPlot = memo(function WindPlot({ winds, asked, here }: Props) {
  const w = useWords();
  const t = w.holding.plot;
  const unit = useWindUnit(useUnits());
  if (!winds) return null;
  const curve = winds.curve();
  const scales = scalesOf(curve.map(({ wind }) => wind));
  const { x, y } = scales;
  const ample = (margin: number | 'unloaded') => (margin === 'unloaded' ? MOST : margin);
  const whole = bandOf(curve.map(({ wind, whole: one }) => [x(wind), y(one.low), y(one.high)]));
  const weakest = bandOf(
    curve.map(({ wind, weakest: one }) => [x(wind), y(ample(one.low)), y(ample(one.high))]),
  );
  const { low, high } = winds.letsGo;
  const speed = (value: number | null) => (value === null ? w.holding.table.beyond : showWind(value, unit));
  return (
    <section>
      <h2 className="minor">{t.title}</h2>
      <svg
        viewBox={`0 0 ${BOX.width} ${BOX.height}`}
        className="wind-plot"
        role="img"
        aria-label={t.label(speed(low), speed(high))}
      >
        <Axes scales={scales} unit={unit} />
        <path d={weakest} className="plot-weakest" />
        <path d={whole} className="plot-whole" />
        <path d={`M${BOX.left} ${y(asked)}H${BOX.width - BOX.right}`} className="plot-asked" />
        <path d={`M${BOX.left} ${y(1)}H${BOX.width - BOX.right}`} className="plot-one" />
        <path d={`M${x(here)} ${BOX.top}V${BOX.height - BOX.bottom}`} className="plot-here" />
        <text x={BOX.width - BOX.right} y={y(asked) - 5} textAnchor="end">
          {t.asked(showNumber(asked, 1))}
        </text>
        <text x={BOX.width - BOX.right} y={y(1) - 5} textAnchor="end">
          {t.one}
        </text>
        <text x={Math.min(x(here) + 6, BOX.width - 150)} y={BOX.top + 12}>
          {t.here(showWind(here, unit))}
        </text>
      </svg>
      <p className="drawing-key about">
        <Key kind="plot-whole" name={t.whole} />
        <Key kind="plot-weakest" name={t.weakest} />
      </p>
      <PlotTable curve={curve} unit={unit} />
    </section>
  );
});

/** The area between the low ends and the high ends. */
function bandOf(ends: readonly (readonly [number, number, number])[]): string {
  const lows = ends.map(([x, low]): At => [x, low]);
  const highs = ends.map(([x, , high]): At => [x, high]).reverse();
  return `${path([...lows, ...highs])}Z`;
}

function Axes({ scales: { x, y, most }, unit }: { readonly scales: Scales; readonly unit: WindUnit }) {
  const shown = unit === 'Bft' ? 'm/s' : unit;
  const last = windSpeedIn(metrePerSecond(most), shown);
  const step = [1, 2, 5, 10, 20].find((one) => last / one <= 8) ?? 50;
  const ticks = Array.from({ length: Math.floor(last / step) + 1 }, (_, k) => k * step);
  return (
    <g className="plot-axes">
      <path d={`M${BOX.left} ${BOX.top}V${y(0)}H${BOX.width - BOX.right}`} />
      {[1, 2, 3, 4].map((margin) => (
        <text key={margin} x={BOX.left - 8} y={y(margin)} textAnchor="end" dominantBaseline="central">
          {margin}
        </text>
      ))}
      {ticks.map((tick) => (
        <text key={tick} x={x(windSpeed(tick, shown))} y={BOX.height - 14} textAnchor="middle">
          {tick}
        </text>
      ))}
      <text x={BOX.width - BOX.right} y={BOX.height - 1} textAnchor="end">
        {shown}
      </text>
    </g>
  );
}

const Key = ({ kind, name }: { readonly kind: string; readonly name: string }) => (
  <span>
    <svg width={26} height={12} aria-hidden="true">
      <path d="M0 1H26V11H0Z" className={kind} />
    </svg>{' '}
    {name}
  </span>
);

/** The same as figures, every fourth wind of the plot; written out once it is opened. */
function PlotTable({ curve, unit }: { readonly curve: readonly WindMargin[]; readonly unit: WindUnit }) {
  const t = useWords().holding.plot;
  const [open, setOpen] = useState(false);
  return (
    <details onToggle={({ currentTarget }) => setOpen(currentTarget.open)}>
      <summary>{t.table}</summary>
      {open ? <PlotRows curve={curve.filter((_, k) => k % 4 === 0)} unit={unit} /> : null}
    </details>
  );
}

function PlotRows({ curve, unit }: { readonly curve: readonly WindMargin[]; readonly unit: WindUnit }) {
  const w = useWords();
  const t = w.holding.plot;
  const two = (margin: number | 'unloaded') =>
    margin === 'unloaded' ? w.holding.table.ample : showNumber(margin, 2);
  return (
    <div className="table-frame">
      <table>
        <thead>
          <tr>
            <th scope="col">{t.wind}</th>
            <th scope="col">{t.panel}</th>
            <th scope="col">{t.point}</th>
          </tr>
        </thead>
        <tbody>
          {curve.map(({ wind, whole, weakest }) => (
            <tr key={wind}>
              <th scope="row">{showWind(wind, unit)}</th>
              <td>{w.holding.table.from(two(whole.low), two(whole.high))}</td>
              <td>
                {w.holding.table.from(two(weakest.low), two(weakest.high))}, {t.which(weakest.weakest)}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

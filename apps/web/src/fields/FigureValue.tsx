import { useId } from 'react';
import type { Figure } from '../contract.ts';
import { local } from '../text/decimals.ts';
import { showFigure, showSmall } from '../text/show.ts';
import { useWords } from '../text/useWords.ts';
import { useMoneySign, useUnits } from './useUnits.ts';

interface Props {
  readonly figure: Figure;
  /** Where the usual rounding for its unit is not the one wanted. */
  readonly text?: string;
}

/** A number to act on. Pressing it tells where it came from. */
export function FigureValue({ figure, text }: Props) {
  const w = useWords();
  const units = useUnits();
  const sign = useMoneySign();
  const id = useId();
  const { status, by, inputs, source } = figure.from;
  return (
    <>
      <button type="button" className="figure-value" popoverTarget={id} title={w.figure.from}>
        <bdi dir="ltr">{text ?? showFigure(figure, units, sign)}</bdi>
        {status === 'estimate' ? <small className="estimate"> {w.hold.estimate}</small> : null}
      </button>
      <div id={id} popover="auto" className="figure-from">
        <p>
          <b>{w.figure.status[status]}.</b> {w.figure.by[by] ?? ''}
        </p>
        {figure.sigma !== undefined ? (
          <p>
            {w.figure.spread(
              figure.unit === 'mm' ? showSmall(figure.sigma) : local(figure.sigma.toPrecision(2)),
            )}
          </p>
        ) : null}
        {inputs.length > 0 ? (
          <p>
            {w.figure.inputs}: {inputs.join(', ')}
          </p>
        ) : null}
        {source ? (
          <p>
            {w.figure.source}: {source}
          </p>
        ) : null}
      </div>
    </>
  );
}

import type { Figure } from '../contract.ts';
import { FigureValue } from './FigureValue.tsx';

interface Props {
  /** Label and figure, or label and text already worded. */
  readonly rows: readonly (readonly [string, Figure | string])[];
}

/** Figures one below the other, each with its label. */
export function FigureList({ rows }: Props) {
  return (
    <dl className="figures">
      {rows.map(([label, value]) => (
        <div key={label}>
          <dt>{label}</dt>
          <dd>{typeof value === 'string' ? value : <FigureValue figure={value} />}</dd>
        </div>
      ))}
    </dl>
  );
}

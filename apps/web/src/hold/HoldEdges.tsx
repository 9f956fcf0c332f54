import type { HoldPlan } from '../contract.ts';
import { FigureValue } from '../fields/FigureValue.tsx';
import { useUnits } from '../fields/useUnits.ts';
import { showLength } from '../text/show.ts';
import { useWords } from '../text/useWords.ts';

/** Why each edge has the hold points it has. */
export function HoldEdges({ hold }: { readonly hold: HoldPlan }) {
  const w = useWords();
  const units = useUnits();
  return (
    <div className="table-frame">
      <table>
        <caption>{w.hold.points}</caption>
        <thead>
          <tr>
            <th scope="col">{w.hold.edge}</th>
            <th scope="col" className="number">
              {w.hold.length}
            </th>
            <th scope="col" className="number">
              {w.hold.gaps}
            </th>
            <th scope="col" className="number">
              {w.hold.gap}
            </th>
            <th scope="col">{w.hold.why}</th>
          </tr>
        </thead>
        <tbody>
          {hold.edges.map((edge) => (
            <tr key={edge.edge}>
              <th scope="row">{w.edges[edge.edge as keyof typeof w.edges] ?? w.sideNumber(edge.edge)}</th>
              <td className="number">{showLength(edge.length, units)}</td>
              <td className="number">{edge.gaps}</td>
              <td className="number">
                <FigureValue figure={edge.gap} />
              </td>
              <td>{w.hold.reason[edge.reason]}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

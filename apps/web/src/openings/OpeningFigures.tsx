import type { OpeningShape } from '../contract.ts';
import { FigureValue } from '../fields/FigureValue.tsx';
import { useUnits } from '../fields/useUnits.ts';
import { showLength, showNumber, showSmall } from '../text/show.ts';
import { useWords } from '../text/useWords.ts';

/** What came out of the readings: size, closing, corners. */
export function OpeningFigures({ shape }: { readonly shape: OpeningShape }) {
  const w = useWords();
  const units = useUnits();
  return (
    <>
      <h3>{w.openings.size}</h3>
      <dl className="figures">
        <div>
          <dt>{w.openings.width}</dt>
          <dd>
            <FigureValue figure={shape.width} />
          </dd>
        </div>
        <div>
          <dt>{w.openings.height}</dt>
          <dd>
            <FigureValue figure={shape.height} />
          </dd>
        </div>
        {shape.redundancy > 0 ? (
          <div>
            <dt>{w.openings.misclosure}</dt>
            <dd>{showSmall(shape.misclosure)}</dd>
          </div>
        ) : null}
        <div>
          <dt>{w.openings.sigma}</dt>
          <dd>{showSmall(shape.sigma)}</dd>
        </div>
      </dl>
      <table>
        <caption>{w.openings.corners}</caption>
        <thead>
          <tr>
            <th scope="col">{w.openings.corner}</th>
            <th scope="col" className="number">
              {w.openings.radius}
            </th>
            <th scope="col" className="number">
              {w.openings.outOfSquare}
            </th>
          </tr>
        </thead>
        <tbody>
          {shape.corners.map((corner) => (
            <tr key={corner.name}>
              <th scope="row">
                {w.edges[corner.name as keyof typeof w.edges] ?? w.openings.cornerNumber(corner.name)}
              </th>
              <td className="number">
                <FigureValue figure={corner.radius} text={showLength(corner.radius.value, units)} />
              </td>
              <td className="number">{w.openings.degrees(showNumber(corner.outOfSquare, 2))}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </>
  );
}

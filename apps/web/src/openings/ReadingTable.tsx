import { type Opening, type OpeningShape, parseLength, type ReadingName } from '../contract.ts';
import { DiagonalHelp } from '../drawing/HelpDrawing.tsx';
import { LengthField, SelectField } from '../fields/fields.tsx';
import { useUnits } from '../fields/useUnits.ts';
import { useCatalogue, useWork } from '../job/work.ts';
import { tapeIn } from '../survey/surveyOf.ts';
import { showLength, showSmall } from '../text/show.ts';
import { useWords } from '../text/useWords.ts';
import { openingIn, readingsOf, shownReading } from './readingEdits.ts';
import { WALK } from './readingPlaces.ts';

interface Props {
  readonly opening: Opening;
  readonly shape: OpeningShape | null;
  readonly measureAgain: (of: ReadingName) => void;
}

/** Each reading, what fits best, how far apart, and how far the tape is trusted. */
export function ReadingTable({ opening, shape, measureAgain }: Props) {
  const w = useWords();
  const { job } = useWork();
  const indices = WALK.flatMap((of) => readingsOf(opening, of));
  return (
    <section>
      <h2 className="minor">{w.openings.readings}</h2>
      <p className="about">{w.openings.readingsAbout}</p>
      <SelectField
        label={w.openings.diagonals}
        value={tapeIn(opening).diagonalsTo}
        options={(['sharp', 'round'] as const).map((value) => ({
          value,
          label: w.openings.diagonalsTo[value],
        }))}
        set={(value) =>
          job.edit(`diagonalsTo.${opening.id}`, (draft) => {
            tapeIn(openingIn(draft, opening.id)).diagonalsTo = value;
          })
        }
      />
      <DiagonalHelp to={tapeIn(opening).diagonalsTo} />
      {indices.length > 0 ? (
        <div className="table-frame">
          <table className="readings">
            <thead>
              <tr>
                <th scope="col">{w.openings.reading}</th>
                <th scope="col" className="number">
                  {w.openings.read}
                </th>
                <th scope="col" className="number">
                  {w.openings.adjusted}
                </th>
                <th scope="col" className="number">
                  {w.openings.residual}
                </th>
                <th scope="col">{w.openings.spread}</th>
                <th scope="col">
                  <span className="only-heard">{w.openings.more}</span>
                </th>
              </tr>
            </thead>
            <tbody>
              {indices.map((index) => (
                <ReadingRow
                  key={index}
                  opening={opening}
                  index={index}
                  shape={shape}
                  measureAgain={measureAgain}
                />
              ))}
            </tbody>
          </table>
        </div>
      ) : null}
      {shape && shape.redundancy === 0 ? <p className="needs">{w.openings.noCheck}</p> : null}
    </section>
  );
}

function ReadingRow({ opening, index, shape, measureAgain }: Props & { readonly index: number }) {
  const w = useWords();
  const units = useUnits();
  const { job } = useWork();
  const habits = useCatalogue((catalogue) => catalogue.habits);
  const reading = tapeIn(opening).readings[index]!;
  const result = shape?.readings.find((one) => one.index === index);
  const nth = readingsOf(opening, reading.of).indexOf(index);
  const name =
    nth === 0 ? w.readings.long[reading.of] : w.readings.again(nth + 1, w.readings.long[reading.of]);
  const sigma = reading.sigma ?? (reading.of.startsWith('radius') ? habits.radiusSigma : habits.tapeSigma);
  const entry = `sigma.${opening.id}.${reading.of}.${nth}`;
  return (
    <tr className={result?.suspect ? 'row-needs' : undefined}>
      <th scope="row">
        {name}
        {result?.suspect ? <strong className="needs"> {w.openings.suspect}</strong> : null}
      </th>
      <td className="number" data-label={w.openings.read}>
        {shownReading(reading, units)}
      </td>
      <td className="number" data-label={w.openings.adjusted}>
        {result ? showLength(result.adjusted, units) : ''}
      </td>
      <td className="number" data-label={w.openings.residual}>
        {!result ? '' : result.standardised === null ? w.openings.unchecked : showSigned(result.residual)}
      </td>
      <td className="narrow" data-label={w.openings.spread}>
        <LengthField
          document={job}
          entry={entry}
          label={w.openings.spreadOf(name)}
          hideLabel
          kind="thin"
          value={sigma}
          set={(value) =>
            job.edit(entry, (draft) => {
              tapeIn(openingIn(draft, opening.id)).readings[index]!.sigma = value;
            })
          }
        />
      </td>
      <td className="row-actions">
        {parseLength(reading.entered, reading.unit).ok ? (
          <button
            type="button"
            className="quiet"
            onClick={() => measureAgain(reading.of)}
            aria-label={w.openings.measureAgainOf(name)}
          >
            {w.openings.measureAgain}
          </button>
        ) : null}
        <button
          type="button"
          className="quiet"
          aria-label={w.openings.removeReading(name)}
          onClick={() =>
            job.edit(`remove.${entry}`, (draft) => {
              tapeIn(openingIn(draft, opening.id)).readings.splice(index, 1);
            })
          }
        >
          {w.app.remove}
        </button>
      </td>
    </tr>
  );
}

const showSigned = (value: number): string => `${value < 0 ? '−' : '+'}${showSmall(Math.abs(value))}`;

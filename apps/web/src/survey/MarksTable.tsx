import type { MarksSurvey, Opening, OpeningShape } from '../contract.ts';
import { MarksHelp } from '../drawing/HelpDrawing.tsx';
import { SelectField, TextField } from '../fields/fields.tsx';
import { useWork } from '../job/work.ts';
import { openingIn } from '../openings/readingEdits.ts';
import { useWords } from '../text/useWords.ts';
import { freePlace, removePlace, renamePlace } from './markEdits.ts';
import { OtherTapes } from './OtherTapes.tsx';
import { RunsTable } from './RunsTable.tsx';
import { marksIn } from './surveyOf.ts';
import { TapeEntry } from './TapeEntry.tsx';

interface Props {
  readonly opening: Opening;
  readonly survey: MarksSurvey;
  readonly shape: OpeningShape | null;
}

/** Points round the opening, each with its tapes from the marks and to the next point. */
export function MarksTable({ opening, survey, shape }: Props) {
  const w = useWords();
  const { job } = useWork();
  const change = (key: string, recipe: (draft: ReturnType<typeof marksDraft>) => void) =>
    job.edit(`${key}.${opening.id}`, (draft) => recipe(marksDraft(openingIn(draft, opening.id))));
  return (
    <section>
      <h2 className="minor">{w.survey.points}</h2>
      <p className="about">{w.survey.pointsAbout}</p>
      <MarksHelp />
      <div className="table-frame">
        <table className="readings tape-grid">
          <thead>
            <tr>
              <th scope="col">{w.survey.point}</th>
              {survey.marks.map(({ name }) => (
                <th scope="col" key={name}>
                  {w.survey.fromMark(name)}
                </th>
              ))}
              <th scope="col">{w.survey.toNext}</th>
              <th scope="col">{w.survey.side}</th>
              <th scope="col">
                <span className="only-heard">{w.openings.more}</span>
              </th>
            </tr>
          </thead>
          <tbody>
            {survey.points.map((_, index) => (
              // The place in the order is what the row is: its name is being typed.
              <PointRow key={index} opening={opening} survey={survey} shape={shape} index={index} />
            ))}
          </tbody>
        </table>
      </div>
      <p className="buttons">
        <button
          type="button"
          disabled={survey.points.length >= 120}
          onClick={() => change('addPoint', (draft) => draft.points.push({ name: freePlace(draft, '') }))}
        >
          {w.survey.addPoint}
        </button>
        <button
          type="button"
          disabled={survey.marks.length >= 12}
          onClick={() => change('addMark', (draft) => draft.marks.push({ name: freePlace(draft, 'M') }))}
        >
          {w.survey.addMark}
        </button>
        {survey.marks.length > 2 ? (
          <button
            type="button"
            className="quiet"
            onClick={() =>
              job.edit(`removeMark.${opening.id}`, (draft) =>
                removePlace(draft, opening.id, survey.marks.at(-1)!.name),
              )
            }
          >
            {w.survey.removeMark(survey.marks.at(-1)!.name)}
          </button>
        ) : null}
      </p>
      <OtherTapes opening={opening} survey={survey} shape={shape} />
      <RunsTable opening={opening} survey={survey} />
    </section>
  );
}

const marksDraft = (opening: ReturnType<typeof openingIn>) => marksIn(opening);

function PointRow({ opening, survey, shape, index }: Props & { readonly index: number }) {
  const w = useWords();
  const { job } = useWork();
  const { name, side } = survey.points[index]!;
  const next = survey.points[(index + 1) % survey.points.length]!.name;
  const key = `${opening.id}.point.${index}`;
  return (
    <tr>
      <th scope="row">
        <TextField
          document={job}
          entry={`name.${key}`}
          label={w.survey.nameOf(name)}
          hideLabel
          className="field-short"
          value={name}
          set={(value) => job.edit(`name.${key}`, (draft) => renamePlace(draft, opening.id, name, value))}
        />
      </th>
      {survey.marks.map((mark) => (
        <td key={mark.name} data-label={w.survey.fromMark(mark.name)}>
          <TapeEntry opening={opening} survey={survey} shape={shape} from={mark.name} to={name} />
        </td>
      ))}
      <td data-label={w.survey.toNext}>
        {next === name ? null : (
          <TapeEntry opening={opening} survey={survey} shape={shape} from={name} to={next} />
        )}
      </td>
      <td data-label={w.survey.side}>
        <SelectField
          label={w.survey.sideOf(name)}
          hideLabel
          value={side ?? 'told'}
          options={(['told', 'left', 'right'] as const).map((value) => ({
            value,
            label: w.survey.sides[value],
          }))}
          set={(value) =>
            job.edit(`side.${key}`, (draft) => {
              const point = marksIn(openingIn(draft, opening.id)).points[index]!;
              if (value === 'told') delete point.side;
              else point.side = value;
            })
          }
        />
      </td>
      <td className="row-actions">
        <button
          type="button"
          className="quiet"
          aria-label={w.survey.removePoint(name)}
          onClick={() => job.edit(`remove.${key}`, (draft) => removePlace(draft, opening.id, name))}
        >
          {w.app.remove}
        </button>
      </td>
    </tr>
  );
}

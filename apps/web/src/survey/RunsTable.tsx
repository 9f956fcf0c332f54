import type { MarkJoint, MarkRun, MarksSurvey, Opening } from '../contract.ts';
import { SelectField, TextField } from '../fields/fields.tsx';
import { useWork } from '../job/work.ts';
import { openingIn } from '../openings/readingEdits.ts';
import { useWords } from '../text/useWords.ts';
import { marksIn } from './surveyOf.ts';

interface Props {
  readonly opening: Opening;
  readonly survey: MarksSurvey;
}

/** Which stretches are straight or curved, through which points, and how they join. */
export function RunsTable({ opening, survey }: Props) {
  const w = useWords();
  const { job } = useWork();
  const sharp = { kind: 'sharp' } as const;
  return (
    <fieldset>
      <legend>{w.survey.runs}</legend>
      <p className="about">{survey.runs.length === 0 ? w.survey.noRuns : w.survey.runsAbout}</p>
      {survey.runs.map((run, index) => (
        // The place in the order is what the run is.
        <RunFields key={index} opening={opening} run={run} index={index} />
      ))}
      <p className="buttons">
        <button
          type="button"
          disabled={survey.runs.length >= 40}
          onClick={() =>
            job.edit(`addRun.${opening.id}.${survey.runs.length}`, (draft) => {
              const { runs, points } = marksIn(openingIn(draft, opening.id));
              if (runs.length > 0) runs.push({ kind: 'line', points: [], joint: sharp });
              else
                points.forEach(({ name }, k) => {
                  const next = points[(k + 1) % points.length]!.name;
                  runs.push({ kind: 'line', points: [name, next], joint: sharp });
                });
            })
          }
        >
          {survey.runs.length === 0 ? w.survey.tellRuns : w.survey.addRun}
        </button>
      </p>
    </fieldset>
  );
}

function RunFields({
  opening,
  run,
  index,
}: {
  readonly opening: Opening;
  readonly run: MarkRun;
  readonly index: number;
}) {
  const w = useWords();
  const { job } = useWork();
  const key = `run.${opening.id}.${index}`;
  const edit = (what: string, change: (run: MarkRunDraft) => void) =>
    job.edit(`${key}.${what}`, (draft) => change(marksIn(openingIn(draft, opening.id)).runs[index]!));
  const joints: Readonly<Record<MarkJoint['kind'], MarkJoint>> = {
    sharp: { kind: 'sharp' },
    round: { kind: 'round', entered: '50 mm', unit: 'mm' },
    smooth: { kind: 'smooth' },
  };
  return (
    <div className="fields">
      <SelectField
        label={w.survey.joint(index + 1)}
        value={run.joint.kind}
        options={(['sharp', 'round', 'smooth'] as const).map((value) => ({
          value,
          label: w.survey.joints[value],
        }))}
        set={(value) => edit('joint', (one) => void (one.joint = joints[value]))}
      />
      {run.joint.kind === 'round' ? (
        <TextField
          document={job}
          entry={`${key}.radius`}
          label={w.openings.radius}
          className="field-short"
          value={run.joint.entered}
          set={(value) =>
            edit('radius', (one) => {
              if (one.joint.kind === 'round') one.joint.entered = value;
            })
          }
        />
      ) : null}
      <SelectField
        label={w.survey.run(index + 1)}
        value={run.kind}
        options={(['line', 'arc'] as const).map((value) => ({ value, label: w.survey.kinds[value] }))}
        set={(value) => edit('kind', (one) => void (one.kind = value))}
      />
      <TextField
        document={job}
        entry={`${key}.points`}
        label={w.survey.through}
        value={run.points.join(' ')}
        set={(value) => edit('points', (one) => void (one.points = value.split(/[\s,;]+/).filter(Boolean)))}
      />
      <button
        type="button"
        className="quiet"
        aria-label={w.survey.removeRun(index + 1)}
        onClick={() =>
          job.edit(`${key}.remove`, (draft) => {
            marksIn(openingIn(draft, opening.id)).runs.splice(index, 1);
          })
        }
      >
        {w.app.remove}
      </button>
    </div>
  );
}

type MarkRunDraft = ReturnType<typeof marksIn<ReturnType<typeof openingIn>>>['runs'][number];

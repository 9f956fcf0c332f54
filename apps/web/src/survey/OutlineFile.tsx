import { useState } from 'react';
import {
  base64,
  callOperation,
  type Opening,
  type OperationInput,
  type OperationOutput,
  type OutlineSurvey,
  type Refusal,
} from '../contract.ts';
import { outlinePath } from '../drawing/outlinePath.ts';
import { boxAround } from '../drawing/view.ts';
import { LengthField, SelectField, TextArea } from '../fields/fields.tsx';
import { useUnits } from '../fields/useUnits.ts';
import { useWork } from '../job/work.ts';
import { openingIn } from '../openings/readingEdits.ts';
import { sayRefused } from '../text/say.ts';
import { showSize } from '../text/show.ts';
import { spoken, useWords } from '../text/useWords.ts';
import { outlineIn } from './surveyOf.ts';

type Unit = NonNullable<OperationInput<'readDrawing'>['unit']>;
type Found = OperationOutput<'readDrawing'>;

interface ChosenFile {
  readonly name: string;
  readonly base64: string;
}
type State =
  | { readonly kind: 'none' }
  | { readonly kind: 'reading' }
  | { readonly kind: 'refused'; readonly file: ChosenFile; readonly refusal: Refusal }
  | { readonly kind: 'read'; readonly file: ChosenFile; readonly found: Found };

interface Props {
  readonly opening: Opening;
  readonly survey: OutlineSurvey;
}

/** Chooses a file, says its unit where it does not, shows its outlines, and takes one over. */
export function OutlineFile({ opening, survey }: Props) {
  const w = useWords();
  const units = useUnits();
  const { job } = useWork();
  const [state, setState] = useState<State>({ kind: 'none' });
  const read = async (file: ChosenFile, unit?: Unit) => {
    setState({ kind: 'reading' });
    const { messages } = spoken();
    const answer = await callOperation(
      'readDrawing',
      {
        ...file,
        date: new Date().toISOString().slice(0, 10),
        ...(unit === undefined ? {} : { unit }),
      },
      messages ? { messages } : {},
    );
    setState(
      answer.ok
        ? { kind: 'read', file, found: answer.value as Found }
        : { kind: 'refused', file, refusal: answer.refusal },
    );
  };
  const choose = async (file: File | undefined) => {
    if (!file) return;
    setState({ kind: 'reading' });
    const bytes = new Uint8Array(await file.arrayBuffer());
    await read({ name: file.name.slice(0, 200), base64: base64(bytes) });
  };
  const accept = (index: number, found: Found) => {
    job.edit(`accept.${opening.id}`, (draft) => {
      openingIn(draft, opening.id).survey = structuredClone(found.outlines[index]!.survey);
    });
    job.settle();
    setState({ kind: 'none' });
  };
  return (
    <section>
      <h2 className="minor">{w.survey.file.title}</h2>
      {survey.segments.length > 0 ? <Accepted opening={opening} survey={survey} /> : null}
      <p>
        <label>
          {w.survey.file.choose}{' '}
          <input
            type="file"
            accept=".dxf,.svg,.csv,.txt"
            onChange={(event) => void choose(event.target.files?.[0])}
          />
        </label>
      </p>
      <div aria-live="polite">
        {state.kind === 'reading' ? <p>{w.survey.file.reading}</p> : null}
        {state.kind === 'refused' ? (
          <>
            <p className="needs">{sayRefused(state.refusal, units)}</p>
            <UnitAsked refusal={state.refusal} answer={(unit) => void read(state.file, unit)} />
          </>
        ) : null}
        {state.kind === 'read' ? <Outlines found={state.found} accept={accept} /> : null}
      </div>
    </section>
  );
}

/** Where only the unit is missing, each likely one is a button. */
function UnitAsked({
  refusal,
  answer,
}: {
  readonly refusal: Refusal;
  readonly answer: (unit: Unit) => void;
}) {
  const w = useWords();
  if (refusal.code !== 'DRAWING_REFUSED' || refusal.refusal.code !== 'UNIT_NOT_STATED') return null;
  return (
    <fieldset>
      <legend>{w.survey.file.unit}</legend>
      <p className="buttons">
        {refusal.refusal.offered.map((unit) => (
          <button key={unit} type="button" onClick={() => answer(unit)}>
            {w.survey.file.units[unit]}
          </button>
        ))}
      </p>
    </fieldset>
  );
}

function Outlines({
  found,
  accept,
}: {
  readonly found: Found;
  readonly accept: (index: number, found: Found) => void;
}) {
  const w = useWords();
  const units = useUnits();
  const [chosen, setChosen] = useState(0);
  const box = boxAround([found.outlines[chosen]!.outline]);
  const pad = 0.05 * Math.max(box.maxX - box.minX, box.maxY - box.minY);
  const size = [box.maxX - box.minX + 2 * pad, box.maxY - box.minY + 2 * pad] as const;
  return (
    <>
      <SelectField
        label={w.survey.file.outline}
        value={String(chosen)}
        options={found.outlines.map(({ name, width, height }, index) => ({
          value: String(index),
          label: w.survey.file.option(name || w.survey.file.plain(index + 1), showSize(width, height, units)),
        }))}
        set={(value) => setChosen(Number(value))}
      />
      <svg
        className="outline-preview"
        viewBox={`${box.minX - pad} ${-box.maxY - pad} ${size[0]} ${size[1]}`}
        role="img"
        aria-label={w.survey.file.outline}
      >
        <g transform="scale(1 -1)">
          <path d={outlinePath(found.outlines[chosen]!.outline)} className="opening-line" />
        </g>
      </svg>
      {found.notes.map(({ say }) => (
        <p key={say} className="about">
          {say}
        </p>
      ))}
      <button type="button" className="main-button" onClick={() => accept(chosen, found)}>
        {w.survey.file.accept}
      </button>
    </>
  );
}

/** Where the outline came from, how far it may lie off, and what is noted of it. */
function Accepted({ opening, survey }: Props) {
  const w = useWords();
  const { job } = useWork();
  const key = `outline.${opening.id}`;
  const sigma = Math.max(...survey.segments.map((one) => one.sigma));
  return (
    <>
      <p>
        {survey.from.kind === 'pattern'
          ? w.kept.fromKept(survey.from.name, survey.from.date, survey.from.pattern?.turnedOver ?? false)
          : w.survey.file.from(survey.from.name, survey.from.date)}{' '}
        {w.survey.file.edges(survey.segments.length)} {survey.from.kind === 'pattern' ? w.kept.check : ''}
      </p>
      {survey.from.kind === 'file' ? (
        <LengthField
          document={job}
          entry={`${key}.sigma`}
          label={w.survey.file.sigma}
          kind="thin"
          value={sigma}
          set={(value) =>
            job.edit(`${key}.sigma`, (draft) => {
              for (const segment of outlineIn(openingIn(draft, opening.id)).segments) segment.sigma = value;
            })
          }
        />
      ) : null}
      <TextArea
        document={job}
        entry={`${key}.note`}
        label={w.survey.file.note}
        value={survey.from.note}
        set={(value) =>
          job.edit(`${key}.note`, (draft) => {
            outlineIn(openingIn(draft, opening.id)).from.note = value;
          })
        }
      />
    </>
  );
}

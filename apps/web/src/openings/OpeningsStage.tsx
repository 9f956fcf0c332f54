import { lazy, Suspense, useState } from 'react';
import { Link, useLocation } from 'wouter';
import { useCurrent } from '../app/useCurrent.ts';
import type { Opening, ReadingName } from '../contract.ts';
import { TextArea, TextField } from '../fields/fields.tsx';
import { StageFindings } from '../findings/StageFindings.tsx';
import { useWork } from '../job/work.ts';
import { SurveyMethod } from '../survey/SurveyMethod.tsx';
import { isMeasured } from '../survey/surveyOf.ts';
import { useWords } from '../text/useWords.ts';
import { GlassFields } from './GlassFields.tsx';
import { Consequences } from './laterHandles.ts';
import { ObstructionFields } from './ObstructionFields.tsx';
import { OpeningDrawing } from './OpeningDrawing.tsx';
import { OpeningFigures } from './OpeningFigures.tsx';
import { OpeningMenu } from './OpeningMenu.tsx';
import { ReadingTable } from './ReadingTable.tsx';
import { openingIn } from './readingEdits.ts';
import { UseFields } from './UseFields.tsx';
import { useAddOpening } from './useAddOpening.ts';

const MarksTable = lazy(async () => ({ default: (await import('../survey/laterSurvey.ts')).MarksTable }));
const OutlineFile = lazy(async () => ({ default: (await import('../survey/laterSurvey.ts')).OutlineFile }));
const BeginFromKept = lazy(() => import('../kept/BeginFromKept.tsx'));
const PhotoSurvey = lazy(async () => ({ default: (await import('../photo/PhotoSurvey.tsx')).PhotoSurvey }));
const SurveyDrawing = lazy(async () => ({
  default: (await import('../survey/laterSurvey.ts')).SurveyDrawing,
}));

/** The chosen opening: its readings on the drawing, and beside it everything else that is known of it. */
export function OpeningsStage() {
  const current = useCurrent();
  if (!current.opening) return <NoOpening />;
  return <OneOpening key={current.opening.id} current={current} />;
}

/** Teaches by doing: one button, and then the drawing asks for its readings. */
function NoOpening() {
  const w = useWords();
  const add = useAddOpening();
  return (
    <section className="empty empty-first">
      <h2>{w.stages.openings}</h2>
      <p>{w.strip.empty}</p>
      <p className="about">{w.openings.teach}</p>
      <button type="button" className="main-button" onClick={add}>
        {w.strip.addFirst}
      </button>
    </section>
  );
}

/** The drawing and the entries of the way the opening is measured. */
function SurveyPart({ current }: { readonly current: ReturnType<typeof useCurrent> }) {
  const w = useWords();
  const [again, setAgain] = useState<Readonly<Partial<Record<ReadingName, number>>>>({});
  const opening = current.opening!;
  const { survey } = opening;
  const shape = current.plan?.shape ?? null;
  if (survey.method === 'tape')
    return (
      <>
        <OpeningDrawing opening={opening} plan={current.plan} stale={current.stale} again={again} />
        {survey.readings.length < 4 ? <p className="teach">{w.openings.teach}</p> : null}
        <ReadingTable
          opening={opening}
          shape={shape}
          measureAgain={(of) => setAgain((before) => ({ ...before, [of]: 1 }))}
        />
      </>
    );
  return (
    <Suspense fallback={<p className="working">{w.app.loading}</p>}>
      <SurveyDrawing opening={opening} plan={current.plan} stale={current.stale} />
      {survey.method === 'marks' ? (
        <MarksTable opening={opening} survey={survey} shape={shape} />
      ) : survey.from.kind === 'photo' ? (
        <PhotoSurvey key={opening.id} opening={opening} survey={survey} />
      ) : (
        <OutlineFile key={opening.id} opening={opening} survey={survey} />
      )}
    </Suspense>
  );
}

/** The way past measuring: the same model was made before. Fetched when it is opened. */
function FromKept({ opening }: { readonly opening: Opening }) {
  const w = useWords();
  const [open, setOpen] = useState(false);
  return (
    <details className="kept-begin" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>{w.kept.begin}</summary>
      {open ? (
        <Suspense fallback={<p className="working">{w.app.loading}</p>}>
          <BeginFromKept opening={opening} />
        </Suspense>
      ) : null}
    </details>
  );
}

function OneOpening({ current }: { readonly current: ReturnType<typeof useCurrent> }) {
  const w = useWords();
  const { job, id: jobId } = useWork();
  const [, go] = useLocation();
  const opening = current.opening!;
  const edit = (key: string, change: (one: ReturnType<typeof openingIn>) => void) =>
    job.edit(`${key}.${opening.id}`, (draft) => change(openingIn(draft, opening.id)));
  return (
    <div className="stage stage-tall">
      <section className="stage-drawing" aria-label={w.openings.title(opening.id, opening.name)}>
        <SurveyMethod opening={opening} />
        {opening.survey.method === 'tape' ? (
          <Link href={`/jobs/${jobId}/window/${opening.id}`} className="window-link" title={w.window.about}>
            {w.window.start}
          </Link>
        ) : null}
        {isMeasured(opening) ? null : <FromKept opening={opening} />}
        <SurveyPart current={current} />
      </section>
      <section className="stage-side">
        <h2>{w.openings.title(opening.id, opening.name)}</h2>
        <StageFindings stage="openings" opening={opening.id} />
        <div className="fields">
          <TextField
            document={job}
            entry={`name.${opening.id}`}
            label={w.openings.name}
            value={opening.name}
            set={(value) => edit('name', (one) => void (one.name = value))}
          />
          <TextField
            document={job}
            entry={`place.${opening.id}`}
            label={w.openings.place}
            placeholder={w.openings.placeExample}
            value={opening.place}
            set={(value) => edit('place', (one) => void (one.place = value))}
          />
        </div>
        <Suspense fallback={null}>
          <Consequences opening={opening.id} />
        </Suspense>
        {current.plan?.shape ? <OpeningFigures shape={current.plan.shape} /> : null}
        <UseFields opening={opening} />
        <GlassFields opening={opening} />
        <ObstructionFields opening={opening} />
        <TextArea
          document={job}
          entry={`notes.${opening.id}`}
          label={w.openings.notes}
          value={opening.notes}
          set={(value) => edit('notes', (one) => void (one.notes = value))}
        />
        <OpeningMenu opening={opening} show={(id) => go(`/jobs/${jobId}/openings${id ? `/${id}` : ''}`)} />
      </section>
    </div>
  );
}

import type { KeyboardEvent } from 'react';
import { useStore } from 'zustand';
import type { LineChoice, Opening, OutlineSurvey } from '../contract.ts';
import { TextArea } from '../fields/fields.tsx';
import { useUnits } from '../fields/useUnits.ts';
import { useJob, useWork } from '../job/work.ts';
import { openingIn } from '../openings/readingEdits.ts';
import '../style/photo.css';
import { outlineIn } from '../survey/surveyOf.ts';
import { today } from '../text/today.ts';
import { useWords } from '../text/useWords.ts';
import { PhotoFiles } from './PhotoFiles.tsx';
import { PhotoOriginWords } from './PhotoOriginWords.tsx';
import { PhotoSheet } from './PhotoSheet.tsx';
import { PhotoTapes } from './PhotoTapes.tsx';
import { type PhotoWork, photoWorkOf } from './photoWork.ts';
import { ReferenceSheets } from './ReferenceSheets.tsx';
import { setupOf } from './setupOf.ts';
import { TapBar } from './TapBar.tsx';
import { TracedEdges } from './TracedEdges.tsx';
import { TraceRun } from './TraceRun.tsx';

interface Props {
  readonly opening: Opening;
  readonly survey: OutlineSurvey;
}

/** From printed sheets and photos of a traced film to the opening's outline, step by step. */
export function PhotoSurvey({ opening, survey }: Props) {
  const w = useWords();
  const units = useUnits();
  const { id } = useWork();
  const work = photoWorkOf(`${id}/${opening.id}`);
  const { taps, shown } = useStore(work.store);
  const trace = (line?: LineChoice) =>
    work.trace(setupOf(survey, units), today(), line === undefined ? {} : { line });
  const follow = () =>
    work.trace(setupOf(survey, units), today(), { taps: { photo: shown, points: taps ?? [] } });
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: it only hears the keys of what is in it
    <section className="photo-survey" onKeyDown={(event) => turnByKeys(event, work)}>
      <h2 className="minor">{w.photo.title}</h2>
      <p className="about">{w.photo.caution}</p>
      {survey.segments.length > 0 ? <Accepted opening={opening} survey={survey} /> : null}
      <ReferenceSheets opening={opening} survey={survey} />
      <PhotoTapes opening={opening} survey={survey} />
      <PhotoFiles work={work} />
      <TraceRun work={work} trace={trace} />
      <TapBar work={work} follow={follow} />
      <PhotoSheet work={work} />
      <Accept work={work} opening={opening} />
      <TracedEdges work={work} />
    </section>
  );
}

/** Undo and redo mean the changes by hand while there are some: the job is not touched before the outline is used. */
function turnByKeys(event: KeyboardEvent, work: PhotoWork): void {
  if (!(event.ctrlKey || event.metaKey) || event.altKey) return;
  if (event.target instanceof HTMLInputElement || event.target instanceof HTMLTextAreaElement) return;
  const key = event.key.toLowerCase();
  const by = key === 'z' && !event.shiftKey ? -1 : key === 'y' || key === 'z' ? 1 : null;
  const { at, history, taps } = work.store.getState();
  if (by === null || (taps === null && history[at + by] === undefined)) return;
  event.preventDefault();
  event.stopPropagation();
  if (taps === null) work.turn(by);
  else if (by < 0) work.set({ taps: taps.slice(0, -1) });
}

function Accept({ work, opening }: { readonly work: PhotoWork; readonly opening: Opening }) {
  const w = useWords();
  const { job } = useWork();
  const { history, at, accepted, step, taps } = useStore(work.store);
  const survey = history[at];
  if (!survey || step || taps) return null;
  const accept = () => {
    job.edit(`accept.${opening.id}`, (draft) => {
      const into = outlineIn(openingIn(draft, opening.id));
      const { note } = into.from;
      Object.assign(into, structuredClone(survey));
      into.from.note = note;
    });
    job.settle();
    work.set({ accepted: true });
  };
  return (
    <div aria-live="polite">
      {accepted ? (
        <p>
          <strong>{w.photo.accepted}</strong>
        </p>
      ) : (
        <p className="buttons">
          <button type="button" className="main-button" onClick={accept}>
            {w.photo.accept}
          </button>
        </p>
      )}
    </div>
  );
}

/** What the opening's outline rests on, and a note on it. */
function Accepted({ opening, survey }: Props) {
  const w = useWords();
  const { job } = useWork();
  const note = useJob(({ document }) => {
    const one = document.openings.find(({ id }) => id === opening.id);
    return one?.survey.method === 'outline' ? one.survey.from.note : '';
  });
  const key = `outline.${opening.id}.note`;
  return (
    <>
      <PhotoOriginWords survey={survey} />
      <TextArea
        document={job}
        entry={key}
        label={w.survey.file.note}
        value={note}
        set={(value) =>
          job.edit(key, (draft) => {
            outlineIn(openingIn(draft, opening.id)).from.note = value;
          })
        }
      />
    </>
  );
}

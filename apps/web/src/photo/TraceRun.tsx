import { useStore } from 'zustand';
import { type LineChoice, type Refusal, sayQuestion } from '../contract.ts';
import { useUnits } from '../fields/useUnits.ts';
import { sayRefused } from '../text/say.ts';
import { showLength, showSmall } from '../text/show.ts';
import { spoken, useWords } from '../text/useWords.ts';
import type { PhotoWork } from './photoWork.ts';

interface Props {
  readonly work: PhotoWork;
  readonly trace: (line?: LineChoice) => void;
}

/** Begins and stops a trace, tells how far it is, and what came of it. */
export function TraceRun({ work, trace }: Props) {
  const w = useWords();
  const { photos, step, outcome, taps } = useStore(work.store);
  if (photos.length === 0) return null;
  const tapable = outcome.kind === 'refused' && isOfInk(outcome.refusal);
  return (
    <section>
      <p className="buttons">
        {step ? (
          <button type="button" onClick={work.stop}>
            {w.photo.trace.stop}
          </button>
        ) : (
          <>
            <button
              type="button"
              className={outcome.kind === 'traced' ? undefined : 'main-button'}
              onClick={() => trace()}
            >
              {outcome.kind === 'none' ? w.photo.trace.go : w.photo.trace.again}
            </button>
            {taps === null && (outcome.kind === 'traced' || tapable) ? (
              <button type="button" onClick={() => work.set({ taps: [], chosen: null })}>
                {w.photo.taps.start}
              </button>
            ) : null}
          </>
        )}
      </p>
      <div aria-live="polite" aria-busy={step !== null}>
        {step ? (
          <p className="working">
            <span className="working-bar" aria-hidden="true" />
            {w.photo.trace.ofPhoto(w.photo.trace.steps[step.step], step.photo + 1, photos.length)} …
          </p>
        ) : (
          <Outcome work={work} trace={trace} />
        )}
      </div>
    </section>
  );
}

/** Where the ink alone is the matter, a person can show where it is. */
const isOfInk = (refusal: Refusal): boolean =>
  refusal.code === 'TRACE_REFUSED' &&
  ['NO_INK_LINE', 'INK_INCOMPLETE', 'OUTLINE_NOT_FITTED', 'FIT_POOR'].includes(refusal.refusal.code);

function Outcome({ work, trace }: Props) {
  const w = useWords();
  const units = useUnits();
  const { outcome, line } = useStore(work.store);
  switch (outcome.kind) {
    case 'none':
      return null;
    case 'stopped':
      return <p>{w.photo.trace.stopped}</p>;
    case 'fault':
      return (
        <p className="needs" role="alert">
          {w.photo.trace.fault} <span className="about">{outcome.message}</span>
        </p>
      );
    case 'refused':
      return <p className="needs">{sayRefused(outcome.refusal, units)}</p>;
    case 'traced': {
      const { width, height, questions } = outcome.traced;
      const known = (sigma: number) => showSmall(1.96 * sigma);
      return (
        <>
          <p>
            {w.photo.trace.size(
              showLength(width.value, units),
              known(width.sigma),
              showLength(height.value, units),
              known(height.sigma),
            )}
          </p>
          <p className="about">{w.photo.trace.plusMinus}</p>
          {questions.map((question) => (
            <p key={question.code} className="needs">
              {sayQuestion(question, spoken().messages)}
            </p>
          ))}
          {line !== null || questions.some(({ code }) => code === 'PARALLEL_LINE') ? (
            <fieldset>
              <legend>{w.photo.trace.line}</legend>
              <p className="buttons">
                {(['darkest', 'inner', 'outer'] as const).map((one) => (
                  <button key={one} type="button" aria-pressed={line === one} onClick={() => trace(one)}>
                    {w.photo.trace.lines[one]}
                  </button>
                ))}
              </p>
            </fieldset>
          ) : null}
        </>
      );
    }
  }
}

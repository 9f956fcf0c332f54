import { useEffect, useState } from 'react';
import type { Revision } from '../contract.ts';
import { useJob, useWork } from '../job/work.ts';
import { showWhen } from '../text/showWhen.ts';
import { useWords } from '../text/useWords.ts';
import { Compare } from './Compare.tsx';
import { NameRevision } from './NameRevision.tsx';
import { sentenceOf } from './useAsk.ts';

/** Every save of the job, newest first, and the way back to each. */
export function RevisionsStage() {
  const w = useWords();
  const { id, job, jobSave, server } = useWork();
  const revision = useJob((state) => state.revision);
  const [list, setList] = useState<readonly Revision[] | null>(null);
  const [sentence, setSentence] = useState<string | null>(null);
  const [comparing, setComparing] = useState<number | null>(null);
  // The list is read again when a save has added to it.
  useEffect(() => {
    server.revisions(id).then(setList, (error) => setSentence(sentenceOf(error)));
  }, [id, server, revision]);
  const restore = async (old: number) => {
    try {
      await jobSave.flush();
      const answer = await server.restore(id, old, job.store.getState().revision);
      if (answer.kind === 'refused') setSentence(answer.why);
      else if (answer.kind === 'conflict')
        job.store.setState({ save: { kind: 'conflict', theirs: answer.theirs } });
      else {
        const restored = await server.openJob(id, answer.revision);
        job.replace(restored.job, restored.revision);
      }
    } catch (error) {
      setSentence(sentenceOf(error));
    }
  };
  return (
    <div className="stage stage-single">
      <h2>{w.revisions.title}</h2>
      <p className="about">{w.revisions.about}</p>
      {sentence ? (
        <p className="field-sentence" role="alert">
          {sentence}
        </p>
      ) : null}
      <NameRevision />
      {comparing !== null && list ? (
        <Compare key={comparing} revisions={list} before={comparing} close={() => setComparing(null)} />
      ) : null}
      {list?.length === 0 ? <p className="empty">{w.revisions.none}</p> : null}
      <ol className="revisions" reversed>
        {list?.map((one) => (
          <li key={one.revision}>
            <span>
              <b>{w.revisions.one(one.revision)}</b> {showWhen(one.savedAt)}{' '}
              <span className="revision-note">{one.note}</span>
            </span>
            <span className="revision-buttons">
              <button
                type="button"
                aria-label={w.keep.revisions.compareOf(one.revision)}
                onClick={() => setComparing(one.revision)}
              >
                {w.keep.revisions.compare}
              </button>
              {one.revision === revision ? (
                <span className="about">{w.revisions.current}</span>
              ) : (
                <button
                  type="button"
                  aria-label={w.revisions.restoreOf(one.revision)}
                  onClick={() => restore(one.revision)}
                >
                  {w.revisions.restore}
                </button>
              )}
            </span>
          </li>
        ))}
      </ol>
    </div>
  );
}

import { useState } from 'react';
import { localCopy } from '../job/localCopy.ts';
import { useJob, useWork } from '../job/work.ts';
import { useWords } from '../text/useWords.ts';
import { sentenceOf } from './useAsk.ts';

/** The job was saved from elsewhere too: shown, with both ways on, and nothing lost on either. */
export function Conflict() {
  const w = useWords();
  const { id, job, jobSave, server, recovered } = useWork();
  const save = useJob((state) => state.save);
  const revision = useJob((state) => state.revision);
  const [sentence, setSentence] = useState<string | null>(null);
  const [seen, setSeen] = useState(false);
  if (save.kind !== 'conflict')
    return recovered && !seen ? (
      <section className="conflict" role="status">
        <p>{w.save.recovered}</p>
        <button type="button" onClick={() => setSeen(true)}>
          {w.app.close}
        </button>
      </section>
    ) : null;
  const { theirs } = save;
  const takeTheirs = async () => {
    try {
      const other = await server.openJob(id);
      job.replace(other.job, other.revision);
      localCopy('job', id).drop();
    } catch (error) {
      setSentence(sentenceOf(error));
    }
  };
  return (
    <section className="conflict" role="alert">
      <h2>{w.save.conflictTitle}</h2>
      <p>{w.save.conflict(revision, theirs)}</p>
      <ul>
        <li>
          <button type="button" onClick={jobSave.keepMine}>
            {w.save.keepMine}
          </button>{' '}
          {w.save.keepMineNote(theirs)}
        </li>
        <li>
          <button type="button" onClick={takeTheirs}>
            {w.save.takeTheirs}
          </button>{' '}
          {w.save.takeTheirsNote}
        </li>
      </ul>
      {sentence ? <p className="field-sentence">{sentence}</p> : null}
    </section>
  );
}

import { Link } from 'wouter';
import type { UnitName } from '../contract.ts';
import { Tools } from '../find/Tools.tsx';
import { useJob, useWork } from '../job/work.ts';
import { useWords } from '../text/useWords.ts';
import { PageBar } from './PageBar.tsx';
import { SaveWords } from './SaveWords.tsx';

/** Name of the job, whether it is saved, undo and redo, the unit. */
export function JobBar() {
  const w = useWords();
  const { job, id } = useWork();
  const name = useJob((state) => state.document.name);
  const customer = useJob((state) => state.document.customer.name);
  const units = useJob((state) => state.document.units);
  const canUndo = useJob((state) => state.history.done.length > 0);
  const canRedo = useJob((state) => state.history.undone.length > 0);
  return (
    <PageBar>
      <div className="job-name">
        <h1>{name}</h1>
        {customer ? <span>{customer}</span> : null}
      </div>
      <Link href={`/jobs/${id}/revisions`} className="save-state">
        <SaveWords document={job} />
      </Link>
      <div className="buttons">
        <button type="button" disabled={!canUndo} onClick={job.undo} aria-keyshortcuts="Control+Z">
          {w.app.undo}
        </button>
        <button type="button" disabled={!canRedo} onClick={job.redo} aria-keyshortcuts="Control+Shift+Z">
          {w.app.redo}
        </button>
      </div>
      <label className="bar-choice">
        <span className="only-heard">{w.app.units.label}</span>
        <select
          value={units}
          onChange={(event) =>
            job.edit('units', (draft) => {
              draft.units = event.target.value as UnitName;
            })
          }
        >
          <option value="in">{w.app.units.in}</option>
          <option value="mm">{w.app.units.mm}</option>
        </select>
      </label>
      <Tools />
    </PageBar>
  );
}

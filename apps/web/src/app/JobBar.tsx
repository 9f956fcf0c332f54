import { useState } from 'react';
import { Link } from 'wouter';
import { type Open, Tools } from '../find/Tools.tsx';
import { useJob, useWork } from '../job/work.ts';
import { useWords } from '../text/useWords.ts';
import { PageBar } from './PageBar.tsx';
import { closeMenu } from './PageMenu.tsx';
import { SaveWords } from './SaveWords.tsx';
import { UnitsSwitch } from './UnitsSwitch.tsx';

/** Name of the job, whether it is saved, undo, redo and find; the unit and the list of keys in the menu. */
export function JobBar() {
  const w = useWords();
  const [open, setOpen] = useState<Open>(null);
  const { job, id } = useWork();
  const name = useJob((state) => state.document.name);
  const customer = useJob((state) => state.document.customer.name);
  const canUndo = useJob((state) => state.history.done.length > 0);
  const canRedo = useJob((state) => state.history.undone.length > 0);
  return (
    <PageBar menu={<JobMenu showKeys={() => setOpen('keys')} />}>
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
        <Tools open={open} setOpen={setOpen} />
      </div>
    </PageBar>
  );
}

function JobMenu({ showKeys }: { readonly showKeys: () => void }) {
  const w = useWords();
  const { job } = useWork();
  const units = useJob((state) => state.document.units);
  return (
    <>
      <UnitsSwitch
        value={units}
        set={(next) =>
          job.edit('units', (draft) => {
            draft.units = next;
          })
        }
      />
      <button
        type="button"
        aria-keyshortcuts="?"
        onClick={() => {
          closeMenu();
          showKeys();
        }}
      >
        {w.find.keys}
      </button>
    </>
  );
}

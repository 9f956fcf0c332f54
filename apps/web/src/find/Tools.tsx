import { type ReactNode, useEffect, useId, useRef, useState } from 'react';
import { useLocation } from 'wouter';
import { useCurrent } from '../app/useCurrent.ts';
import { STAGES } from '../findings/stageOf.ts';
import { useCatalogue, useJob, usePlan, useWork } from '../job/work.ts';
import { useWords } from '../text/useWords.ts';
import { Hits } from './Hits.tsx';
import { searchJob } from './searchJob.ts';

/** The dialog that is shown. */
export type Open = 'find' | 'keys' | null;

interface Props {
  readonly open: Open;
  readonly setOpen: (open: Open) => void;
}

/** Finding in the job, a button in the bar; the list of keys, asked for in the menu; a key for each. */
export function Tools({ open, setOpen }: Props) {
  const w = useWords();
  useJobKeys(setOpen);
  const close = () => setOpen(null);
  return (
    <>
      <button type="button" aria-keyshortcuts="/" onClick={() => setOpen('find')}>
        {w.find.find}
      </button>
      {open === 'find' ? <FindInJob close={close} /> : null}
      {open === 'keys' ? <KeyList close={close} /> : null}
    </>
  );
}

/** Keys that work anywhere in a job; single letters only where nothing is being typed. */
function useJobKeys(setOpen: (open: Open) => void): void {
  const { id } = useWork();
  const [, go] = useLocation();
  const openings = useJob((state) => state.document.openings);
  const { opening } = useCurrent();
  useEffect(() => {
    const press = (event: KeyboardEvent) => {
      const typing =
        event.target instanceof Element && event.target.closest('input, textarea, select, dialog');
      if (event.altKey && !event.ctrlKey && !event.metaKey) {
        const stage = /^Digit([1-9])$/.exec(event.code)?.[1];
        const at = openings.findIndex((one) => one.id === opening?.id);
        const next = openings[at + (event.key === 'ArrowDown' ? 1 : -1)];
        if (stage) go(`/jobs/${id}/${STAGES[Number(stage) - 1]}${opening ? `/${opening.id}` : ''}`);
        else if (/^Arrow(Down|Up)$/.test(event.key) && next && !(typing instanceof HTMLSelectElement))
          go(location.pathname.replace(/^(\/jobs\/[^/]+\/[^/]+).*$/, `$1/${next.id}`));
        else return;
        event.preventDefault();
      } else if (!typing && !event.ctrlKey && !event.metaKey && (event.key === '/' || event.key === '?')) {
        event.preventDefault();
        setOpen(event.key === '/' ? 'find' : 'keys');
      }
    };
    addEventListener('keydown', press);
    return () => removeEventListener('keydown', press);
  }, [id, go, openings, opening, setOpen]);
}

interface DialogProps {
  readonly title: string;
  readonly close: () => void;
  readonly children: ReactNode;
}

function Dialog({ title, close, children }: DialogProps) {
  const w = useWords();
  const id = useId();
  const ref = useRef<HTMLDialogElement>(null);
  useEffect(() => ref.current?.showModal(), []);
  return (
    <dialog ref={ref} aria-labelledby={id} className="tool" onClose={close}>
      <h2 id={id}>{title}</h2>
      {children}
      <button type="button" onClick={() => ref.current?.close()}>
        {w.app.close}
      </button>
    </dialog>
  );
}

function FindInJob({ close }: { readonly close: () => void }) {
  const w = useWords();
  const id = useId();
  const [query, setQuery] = useState('');
  const job = useJob((state) => state.document);
  const catalogue = useCatalogue((one) => one);
  const patterns = usePlan((state) => state.plan?.patterns) ?? [];
  return (
    <Dialog title={w.find.inJob} close={close}>
      <div className="field field-wide">
        <label htmlFor={id}>{w.find.label}</label>
        <span className="field-line">
          <input id={id} type="search" value={query} onChange={(event) => setQuery(event.target.value)} />
        </span>
      </div>
      <Hits query={query} hits={searchJob(query, job, { catalogue, patterns })} gone={close} />
    </Dialog>
  );
}

function KeyList({ close }: { readonly close: () => void }) {
  const w = useWords();
  return (
    <Dialog title={w.find.keysTitle} close={close}>
      <dl className="figures">
        {Object.values(w.find.key).map(([keys, what]) => (
          <div key={keys}>
            <dt>{what}</dt>
            <dd>
              <kbd>{keys}</kbd>
            </dd>
          </div>
        ))}
      </dl>
      <p className="about">{w.find.keysAbout}</p>
    </Dialog>
  );
}

import { useState } from 'react';
import { useStore } from 'zustand';
import type { Job } from '../contract.ts';
import { useUnits } from '../fields/useUnits.ts';
import type { Autosave } from '../job/autosave.ts';
import type { DocumentStore } from '../job/documentStore.ts';
import { useJob, useWork } from '../job/work.ts';
import { fieldWords, valueWords } from '../merge/fieldWords.ts';
import { type FieldConflict, type Picks, pathKey, type Side } from '../merge/merge.ts';
import { useWords } from '../text/useWords.ts';
import { Changes } from './Changes.tsx';

/** What came from elsewhere: brought together and said, or, where both changed one field, put to the person. */
export function Conflict() {
  const kind = useJob((state) => state.save.kind);
  const merged = useJob((state) => state.merged);
  const document = useJob((state) => state.document);
  const { job, jobSave } = useWork();
  if (kind === 'conflict') return <Choosing document={job} save={jobSave} jobs={[document]} />;
  if (merged) return <Merged />;
  return <Recovered />;
}

function Recovered() {
  const w = useWords();
  const { recovered } = useWork();
  const [seen, setSeen] = useState(false);
  if (!recovered || seen) return null;
  return (
    <section className="conflict" role="status">
      <p>{w.save.recovered}</p>
      <button type="button" onClick={() => setSeen(true)}>
        {w.app.close}
      </button>
    </section>
  );
}

function Merged() {
  const w = useWords();
  const { job } = useWork();
  const merged = useJob((state) => state.merged);
  const document = useJob((state) => state.document);
  if (!merged) return null;
  return (
    <section className="conflict conflict-done" role="status">
      <h2>{w.keep.merged.title(merged.revision)}</h2>
      <Changes changes={merged.taken} jobs={[document]} />
      <button type="button" onClick={() => job.store.setState({ merged: null })}>
        {w.app.close}
      </button>
    </section>
  );
}

interface ChoosingProps<T> {
  readonly document: DocumentStore<T>;
  readonly save: Autosave<T>;
  /** Where the names of openings are looked up. */
  readonly jobs: readonly Job[];
}

/** Every field that both sides changed, with both values; one is picked for each, and only then is anything saved. */
export function Choosing<T extends object>({ document, save, jobs }: ChoosingProps<T>) {
  const w = useWords();
  const state = useStore(document.store, (one) => one.save);
  const revision = useStore(document.store, (one) => one.revision);
  // What is typed meanwhile is brought together too.
  useStore(document.store, (one) => one.document);
  const [picks, setPicks] = useState<Picks>({});
  const conflicts = save.together({})?.conflicts ?? [];
  const left = save.together(picks);
  if (state.kind !== 'conflict' || !left) return null;
  const pickAll = (side: Side) =>
    setPicks(Object.fromEntries(conflicts.map(({ path }) => [pathKey(path), side])));
  const c = w.keep.conflict;
  return (
    <section className="conflict" role="alert">
      <h2>{c.title}</h2>
      <p>{c.about(revision, state.theirs)}</p>
      {left.taken.length > 0 ? (
        <details>
          <summary>{c.others(left.taken.length)}</summary>
          <Changes changes={left.taken} jobs={jobs} />
        </details>
      ) : null}
      <div className="conflict-fields">
        {conflicts.map((one) => (
          <OneField
            key={pathKey(one.path)}
            conflict={one}
            jobs={jobs}
            picked={picks[pathKey(one.path)]}
            pick={(side) => setPicks((before) => ({ ...before, [pathKey(one.path)]: side }))}
          />
        ))}
      </div>
      <div className="buttons">
        {conflicts.length > 1 ? (
          <>
            <button type="button" onClick={() => pickAll('mine')}>
              {c.allMine}
            </button>
            <button type="button" onClick={() => pickAll('theirs')}>
              {c.allTheirs}
            </button>
          </>
        ) : null}
        <button
          type="button"
          className="main-button"
          disabled={left.conflicts.length > 0}
          onClick={() => save.resolve(picks)}
        >
          {c.done}
        </button>
        {left.conflicts.length > 0 ? <span className="about">{c.left(left.conflicts.length)}</span> : null}
      </div>
    </section>
  );
}

interface OneFieldProps {
  readonly conflict: FieldConflict;
  readonly jobs: readonly Job[];
  readonly picked: Side | undefined;
  readonly pick: (side: Side) => void;
}

function OneField({ conflict, jobs, picked, pick }: OneFieldProps) {
  const w = useWords();
  const units = useUnits();
  const { path } = conflict;
  const name = pathKey(path);
  return (
    <fieldset className="conflict-field">
      <legend>{fieldWords(path, jobs, w)}</legend>
      {(['mine', 'theirs'] as const).map((side) => (
        <label key={side} className="pick">
          <input type="radio" name={name} checked={picked === side} onChange={() => pick(side)} />
          <span>
            {w.keep.conflict[side]}: <b>{valueWords(path, conflict[side], units, w)}</b>
          </span>
        </label>
      ))}
      <span className="about">{w.keep.conflict.was(valueWords(path, conflict.base, units, w))}</span>
    </fieldset>
  );
}

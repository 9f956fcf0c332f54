import { useEffect, useState } from 'react';
import { useStore } from 'zustand';
import { PageBar } from '../app/PageBar.tsx';
import { sentenceOf } from '../app/useAsk.ts';
import { useUndoKeys } from '../app/useUndoKeys.ts';
import type { Catalogue, UnitName } from '../contract.ts';
import { MoneyContext, UnitsContext } from '../fields/useUnits.ts';
import { type Autosave, startAutosave } from '../job/autosave.ts';
import { checkCatalogue } from '../job/checks.ts';
import { createDocumentStore, type DocumentStore } from '../job/documentStore.ts';
import { localCopy } from '../job/localCopy.ts';
import type { Server } from '../server/server.ts';
import { useWords } from '../text/useWords.ts';
import { CatalogueList } from './CatalogueList.tsx';
import { HabitFields, RateFields } from './HabitFields.tsx';
import { LISTS } from './lists.ts';
import { PrinterList } from './PrinterList.tsx';
import { ShopFields } from './ShopFields.tsx';

interface Opened {
  readonly document: DocumentStore<Catalogue>;
  readonly save: Autosave;
}

/** The shop's own lists, prices, minutes and habits. */
export default function CataloguePage({ server }: { readonly server: Server }) {
  const w = useWords();
  const [opened, setOpened] = useState<Opened | null>(null);
  const [sentence, setSentence] = useState<string | null>(null);
  useEffect(() => {
    let one: Opened | null = null;
    let current = true;
    server.openCatalogue().then(
      ({ catalogue, revision }) => {
        const document = createDocumentStore(catalogue, revision, checkCatalogue);
        const save = startAutosave(document, {
          put: (next, basedOn) => server.saveCatalogue(next, basedOn),
          local: localCopy('catalogue', 'shop'),
          noAnswer: w.app.noAnswer,
        });
        one = { document, save };
        if (current) setOpened(one);
      },
      (error) => setSentence(sentenceOf(error)),
    );
    return () => {
      current = false;
      void one?.save.flush().finally(() => one?.save.stop());
    };
  }, [server, w]);
  if (opened) return <CatalogueBench {...opened} server={server} />;
  return (
    <>
      <PageBar />
      <main id="main" className="page-note">
        <h1>{sentence ?? w.app.loading}</h1>
      </main>
    </>
  );
}

function CatalogueBench({ document, save, server }: Opened & { readonly server: Server }) {
  const w = useWords();
  const currency = useStore(document.store, (state) => state.document.currency);
  const [units, setUnits] = useState<UnitName>('in');
  useUndoKeys(document);
  return (
    <UnitsContext value={units}>
      <MoneyContext value={currency}>
        <PageBar>
          <div className="job-name">
            <h1>{w.catalogue.title}</h1>
          </div>
          <CatalogueSave document={document} />
          <div className="buttons">
            <UndoButtons document={document} />
          </div>
          <label className="bar-choice">
            <span className="only-heard">{w.app.units.label}</span>
            <select value={units} onChange={(event) => setUnits(event.target.value as UnitName)}>
              <option value="in">{w.app.units.in}</option>
              <option value="mm">{w.app.units.mm}</option>
            </select>
          </label>
        </PageBar>
        <main id="main" className="catalogue-page">
          <CatalogueConflict document={document} save={save} server={server} />
          <p className="about">{w.catalogue.about}</p>
          <ShopFields document={document} />
          <PrinterList document={document} />
          {LISTS.map((list) => (
            <CatalogueList key={list} document={document} list={list} />
          ))}
          <HabitFields document={document} />
          <RateFields document={document} />
        </main>
      </MoneyContext>
    </UnitsContext>
  );
}

function UndoButtons({ document }: { readonly document: DocumentStore<Catalogue> }) {
  const w = useWords();
  const canUndo = useStore(document.store, (state) => state.history.done.length > 0);
  const canRedo = useStore(document.store, (state) => state.history.undone.length > 0);
  return (
    <>
      <button type="button" disabled={!canUndo} onClick={document.undo}>
        {w.app.undo}
      </button>
      <button type="button" disabled={!canRedo} onClick={document.redo}>
        {w.app.redo}
      </button>
    </>
  );
}

function CatalogueSave({ document }: { readonly document: DocumentStore<Catalogue> }) {
  const w = useWords();
  const { save, revision } = useStore(document.store, (state) => state);
  const words =
    save.kind === 'saved'
      ? w.save.saved(revision)
      : save.kind === 'failed'
        ? w.save.failed(save.why)
        : save.kind === 'conflict'
          ? w.save.conflictShort
          : save.kind === 'saving'
            ? w.save.saving
            : w.save.waiting;
  return (
    <span
      className={`save-state${save.kind === 'failed' || save.kind === 'conflict' ? ' needs' : ''}`}
      role="status"
    >
      {words}
    </span>
  );
}

function CatalogueConflict({ document, save, server }: Opened & { readonly server: Server }) {
  const w = useWords();
  const state = useStore(document.store, (one) => one.save);
  const revision = useStore(document.store, (one) => one.revision);
  if (state.kind !== 'conflict') return null;
  const takeTheirs = async () => {
    const other = await server.openCatalogue();
    document.replace(other.catalogue, other.revision);
    localCopy('catalogue', 'shop').drop();
  };
  return (
    <section className="conflict" role="alert">
      <h2>{w.save.conflictTitle}</h2>
      <p>{w.save.conflict(revision, state.theirs)}</p>
      <button type="button" onClick={save.keepMine}>
        {w.save.keepMine}
      </button>{' '}
      <button type="button" onClick={() => void takeTheirs()}>
        {w.save.takeTheirs}
      </button>
    </section>
  );
}

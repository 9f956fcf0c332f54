import { useEffect, useState } from 'react';
import { useStore } from 'zustand';
import { Choosing } from '../app/Conflict.tsx';
import { PageBar } from '../app/PageBar.tsx';
import { SaveWords } from '../app/SaveWords.tsx';
import { UnitsSwitch } from '../app/UnitsSwitch.tsx';
import { sentenceOf } from '../app/useAsk.ts';
import { useUndoKeys } from '../app/useUndoKeys.ts';
import type { Catalogue, UnitName } from '../contract.ts';
import { MoneyContext, UnitsContext } from '../fields/useUnits.ts';
import type { Autosave } from '../job/autosave.ts';
import type { DocumentStore } from '../job/documentStore.ts';
import type { Server } from '../server/server.ts';
import { useWords } from '../text/useWords.ts';
import { CatalogueList } from './CatalogueList.tsx';
import { HabitFields, RateFields } from './HabitFields.tsx';
import { LISTS } from './lists.ts';
import { openCatalogueWork } from './openCatalogueWork.ts';
import { PrinterList } from './PrinterList.tsx';
import { ShopFields } from './ShopFields.tsx';

interface Opened {
  readonly document: DocumentStore<Catalogue>;
  readonly save: Autosave<Catalogue>;
}

/** The shop's own lists, prices, minutes and habits. */
export default function CataloguePage({ server }: { readonly server: Server }) {
  const w = useWords();
  const [opened, setOpened] = useState<Opened | null>(null);
  const [sentence, setSentence] = useState<string | null>(null);
  useEffect(() => {
    let one: Opened | null = null;
    let current = true;
    openCatalogueWork(server, w.app.noAnswer).then(
      (work) => {
        one = work;
        if (current) setOpened(work);
        else work.save.stop();
      },
      (error) => setSentence(sentenceOf(error)),
    );
    return () => {
      current = false;
      void one?.save.flush().finally(() => one?.save.stop());
    };
  }, [server, w]);
  if (opened) return <CatalogueBench {...opened} />;
  return (
    <>
      <PageBar />
      <main id="main" className="page-note">
        <h1>{sentence ?? w.app.loading}</h1>
      </main>
    </>
  );
}

function CatalogueBench({ document, save }: Opened) {
  const w = useWords();
  const currency = useStore(document.store, (state) => state.document.currency);
  const [units, setUnits] = useState<UnitName>('in');
  useUndoKeys(document);
  return (
    <UnitsContext value={units}>
      <MoneyContext value={currency}>
        <PageBar menu={<UnitsSwitch value={units} set={setUnits} />}>
          <div className="job-name">
            <h1>{w.catalogue.title}</h1>
          </div>
          <CatalogueSave document={document} />
          <div className="buttons">
            <UndoButtons document={document} />
          </div>
        </PageBar>
        <main id="main" className="catalogue-page">
          <Choosing document={document} save={save} jobs={[]} />
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

const CatalogueSave = ({ document }: { readonly document: DocumentStore<Catalogue> }) => (
  <span className="save-state" role="status">
    <SaveWords document={document} />
  </span>
);

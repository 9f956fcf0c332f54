import type { Catalogue } from '../contract.ts';
import { type Autosave, startAutosave } from '../job/autosave.ts';
import { checkCatalogue, readCatalogue } from '../job/checks.ts';
import { createDocumentStore, type DocumentStore } from '../job/documentStore.ts';
import { droppingAdopted, editKeeper } from '../offline/editKeeper.ts';
import { keepCopy } from '../offline/keptDocuments.ts';
import { layOnTop, openKept } from '../offline/openKept.ts';
import type { Server } from '../server/server.ts';

const SHOP = 'shop';

interface CatalogueWork {
  readonly document: DocumentStore<Catalogue>;
  readonly save: Autosave<Catalogue>;
}

/** Opens the shop's catalogue, from the browser's own store where the server is away, with its saving. */
export async function openCatalogueWork(server: Server, noAnswer: string): Promise<CatalogueWork> {
  const newest = async () => {
    const { catalogue, revision } = await server.openCatalogue();
    return { document: catalogue, revision };
  };
  const opened = await openKept<Catalogue>({
    kind: 'catalogue',
    id: SHOP,
    read: async (value) => readCatalogue(value),
    fetch: newest,
  });
  const { base, conflict, adopted } = opened;
  const document = createDocumentStore(
    base?.document ?? opened.document,
    base?.revision ?? 0,
    checkCatalogue,
  );
  const save = startAutosave(document, {
    base,
    conflict,
    put: (next, basedOn) => server.saveCatalogue(next, basedOn ?? 0),
    newest,
    keeper: droppingAdopted(editKeeper<Catalogue>('catalogue', SHOP), adopted),
    onCopy: (copy) => void keepCopy('catalogue', SHOP, copy).catch(() => {}),
    noAnswer,
  });
  layOnTop(opened, document, save);
  return { document, save };
}

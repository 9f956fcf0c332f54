import type { Draft } from 'immer';
import { useState } from 'react';
import { useStore } from 'zustand';
import type { Catalogue } from '../contract.ts';
import type { DocumentStore } from '../job/documentStore.ts';
import { freeId } from '../openings/newOpening.ts';
import { useWords } from '../text/useWords.ts';
import { FastenerFields } from './FastenerFields.tsx';
import { ItemField } from './ItemField.tsx';
import { FIELDS, type ListName, NEW_ITEM } from './lists.ts';
import { MagnetShape } from './MagnetShape.tsx';
import { Rolls } from './Rolls.tsx';

/** A list the catalogue leaves out. */
const NONE: readonly [] = [];

interface Props {
  readonly document: DocumentStore<Catalogue>;
  readonly list: ListName;
}

/** One list of the catalogue: each entry a card to open and write in. */
export function CatalogueList({ document, list }: Props) {
  const w = useWords();
  const items = useStore(document.store, (state) => state.document[list] ?? NONE);
  const [opened, setOpened] = useState<string | null>(null);
  const name = w.catalogue.lists[list];
  const add = () => {
    const id = freeId(`${list}-`, items);
    document.edit(`${list}.add`, (draft) => {
      draft[list] ??= [];
      (draft[list] as unknown[]).push(structuredClone({ id, name: w.catalogue.newItem, ...NEW_ITEM[list] }));
    });
    document.settle();
    setOpened(id);
  };
  return (
    <section>
      <h2>{name}</h2>
      {items.length === 0 ? <p className="empty">{w.catalogue.empty}</p> : null}
      <ul className="catalogue-list">
        {items.map((item, index) => (
          <li key={item.id}>
            <details open={opened === item.id}>
              <summary>{item.name}</summary>
              <CatalogueItem document={document} list={list} index={index} />
            </details>
          </li>
        ))}
      </ul>
      <button type="button" onClick={add}>
        {w.catalogue.addTo(name)}
      </button>
    </section>
  );
}

function CatalogueItem({ document, list, index }: Props & { readonly index: number }) {
  const w = useWords();
  const item = useStore(document.store, (state) => state.document[list]?.[index]);
  if (!item) return null;
  const itemKey = `${list}.${item.id}`;
  const itemIn = (draft: Draft<Catalogue>) => draft[list]![index]!;
  return (
    <div className="catalogue-item">
      <div className="fields">
        {FIELDS[list].map((spec) => (
          <ItemField
            key={spec.at}
            document={document}
            spec={spec}
            item={item}
            itemKey={itemKey}
            itemIn={itemIn}
          />
        ))}
      </div>
      {'rolls' in item ? <Rolls document={document} index={index} fabric={item} /> : null}
      {'fixings' in item ? <FastenerFields document={document} index={index} fastener={item} /> : null}
      {'shape' in item ? <MagnetShape document={document} index={index} magnet={item} /> : null}
      <p className="about">{list === 'operations' ? '' : w.catalogue.inUse}</p>
      <button
        type="button"
        className="quiet"
        onClick={() => document.edit(`${itemKey}.remove`, (draft) => void draft[list]!.splice(index, 1))}
      >
        {w.catalogue.removeItem(item.name)}
      </button>
    </div>
  );
}

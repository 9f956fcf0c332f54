import { useStore } from 'zustand';
import type { Catalogue } from '../contract.ts';
import { NumberField, TextArea, TextField } from '../fields/fields.tsx';
import type { DocumentStore } from '../job/documentStore.ts';
import { useWords } from '../text/useWords.ts';
import { ShopPapers } from './ShopPapers.tsx';

/** Who the shop is, and its money. */
export function ShopFields({ document }: { readonly document: DocumentStore<Catalogue> }) {
  const w = useWords();
  const { name, shop, currency } = useStore(document.store, (state) => state.document);
  return (
    <section>
      <h2>{w.catalogue.shop}</h2>
      <div className="fields">
        <TextField
          document={document}
          entry="name"
          label={w.catalogue.name}
          value={name}
          set={(value) => document.edit('name', (draft) => void (draft.name = value))}
        />
        <TextField
          document={document}
          entry="shop.name"
          label={w.catalogue.shopName}
          value={shop.name}
          set={(value) => document.edit('shop.name', (draft) => void (draft.shop.name = value))}
        />
        <TextField
          document={document}
          entry="shop.contact"
          label={w.catalogue.contact}
          value={shop.contact}
          set={(value) => document.edit('shop.contact', (draft) => void (draft.shop.contact = value))}
        />
        <TextArea
          document={document}
          entry="shop.address"
          label={w.catalogue.address}
          value={shop.address}
          set={(value) => document.edit('shop.address', (draft) => void (draft.shop.address = value))}
        />
        <TextArea
          document={document}
          entry="shop.terms"
          label={w.catalogue.terms}
          value={shop.terms}
          set={(value) => document.edit('shop.terms', (draft) => void (draft.shop.terms = value))}
        />
      </div>
      <ShopPapers document={document} />
      <fieldset>
        <legend>{w.catalogue.currency}</legend>
        <div className="fields">
          <TextField
            document={document}
            entry="currency.code"
            label={w.catalogue.currencyCode}
            className="field-short"
            value={currency.code}
            set={(value) => document.edit('currency.code', (draft) => void (draft.currency.code = value))}
          />
          <TextField
            document={document}
            entry="currency.symbol"
            label={w.catalogue.currencySymbol}
            className="field-short"
            value={currency.symbol}
            set={(value) => document.edit('currency.symbol', (draft) => void (draft.currency.symbol = value))}
          />
          <NumberField
            document={document}
            entry="currency.decimals"
            label={w.catalogue.currencyDecimals}
            className="field-short"
            value={currency.decimals}
            set={(value) =>
              document.edit('currency.decimals', (draft) => void (draft.currency.decimals = value))
            }
          />
        </div>
      </fieldset>
    </section>
  );
}

import { useId, useState } from 'react';
import { useStore } from 'zustand';
import { base64, type Catalogue } from '../contract.ts';
import { SelectField } from '../fields/fields.tsx';
import type { DocumentStore } from '../job/documentStore.ts';
import { useWords } from '../text/useWords.ts';

/** Bytes of a picture that fit the catalogue. */
const MOST_LOGO = 220_000;

/** The language of the shop's papers, and its sign at the head of a quote. */
export function ShopPapers({ document }: { readonly document: DocumentStore<Catalogue> }) {
  const w = useWords();
  const shop = useStore(document.store, (state) => state.document.shop);
  return (
    <div className="fields">
      <SelectField
        label={w.shopPapers.language}
        value={shop.language ?? 'en'}
        options={(['en', 'de', 'es'] as const).map((one) => ({ value: one, label: w.sheets.languages[one] }))}
        set={(language) =>
          void document.edit('shop.language', (draft) => void (draft.shop.language = language))
        }
      />
      <LogoField document={document} logo={shop.logo} />
    </div>
  );
}

interface LogoProps {
  readonly document: DocumentStore<Catalogue>;
  readonly logo: Catalogue['shop']['logo'];
}

function LogoField({ document, logo }: LogoProps) {
  const w = useWords();
  const id = useId();
  const [sentence, setSentence] = useState<string | null>(null);
  const take = async (file: File | undefined) => {
    if (!file) return;
    const mediaType = file.type;
    if (mediaType !== 'image/png' && mediaType !== 'image/jpeg') return setSentence(w.shopPapers.logoKind);
    if (file.size > MOST_LOGO) return setSentence(w.shopPapers.logoTooLarge(Math.round(file.size / 1000)));
    const text = base64(new Uint8Array(await file.arrayBuffer()));
    const problem = document.edit('shop.logo', (draft) => {
      draft.shop.logo = { mediaType, base64: text };
    });
    document.settle();
    setSentence(problem?.sentence ?? null);
  };
  return (
    <div className={`field${sentence ? ' field-wrong' : ''}`}>
      <label htmlFor={id}>{w.shopPapers.logo}</label>
      {logo ? (
        <img
          className="shop-logo"
          src={`data:${logo.mediaType};base64,${logo.base64}`}
          alt={w.shopPapers.logoNow}
        />
      ) : null}
      <span className="field-line">
        <input
          id={id}
          type="file"
          accept="image/png,image/jpeg"
          aria-describedby={`${id}-note`}
          onChange={(event) => void take(event.target.files?.[0])}
        />
        {logo ? (
          <button
            type="button"
            className="quiet"
            onClick={() => document.edit('shop.logo', (draft) => void delete draft.shop.logo)}
          >
            {w.shopPapers.logoRemove}
          </button>
        ) : null}
      </span>
      <p id={`${id}-note`} className={sentence ? 'field-sentence' : 'field-about'}>
        {sentence ?? w.shopPapers.logoAbout}
      </p>
    </div>
  );
}

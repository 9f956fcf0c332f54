import { useState } from 'react';
import { sentenceOf } from '../app/useAsk.ts';
import { LABEL_STOCKS, type Offcut } from '../contract.ts';
import { CheckField, SelectField } from '../fields/fields.tsx';
import { useUnits } from '../fields/useUnits.ts';
import { useCatalogue, useWork } from '../job/work.ts';
import { fileUrl, saveFile } from '../sheets/saveFile.ts';
import { today } from '../text/today.ts';
import { useWords } from '../text/useWords.ts';

/** Labels for the offcuts that are still whole, on a sheet of labels. */
export function OffcutLabels({ offcuts }: { readonly offcuts: readonly Offcut[] }) {
  const w = useWords();
  const units = useUnits();
  const { server } = useWork();
  const catalogue = useCatalogue((all) => all);
  const [stock, setStock] = useState(LABEL_STOCKS[units === 'in' ? 6 : 0]!.name);
  const [edges, setEdges] = useState(false);
  const [making, setMaking] = useState(false);
  const [sentence, setSentence] = useState<string | null>(null);
  const whole = offcuts.filter(({ used }) => used === undefined);
  if (whole.length === 0) return null;
  const make = async (then: typeof saveFile) => {
    setMaking(true);
    setSentence(null);
    try {
      then(await server.offcutLabels({ catalogue, units, stock, edges, date: today() }));
    } catch (error) {
      setSentence(sentenceOf(error));
    }
    setMaking(false);
  };
  return (
    <fieldset>
      <legend>{w.offcut.labels.title}</legend>
      <p className="about">{w.offcut.labels.about(whole.length)}</p>
      <div className="fields">
        <SelectField
          label={w.offcut.labels.stock}
          value={stock}
          options={LABEL_STOCKS.map(({ name }) => ({ value: name, label: name }))}
          set={setStock}
        />
        <CheckField label={w.offcut.labels.edges} value={edges} set={setEdges} />
      </div>
      <p className="buttons">
        <button type="button" disabled={making} onClick={() => make((file) => open(fileUrl(file), '_blank'))}>
          {w.offcut.labels.make}
        </button>
        <button type="button" disabled={making} onClick={() => make(saveFile)}>
          {w.offcut.labels.save}
        </button>
      </p>
      <div aria-live="polite">{sentence ? <p className="field-sentence">{sentence}</p> : null}</div>
    </fieldset>
  );
}

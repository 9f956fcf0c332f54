import type { Draft } from 'immer';
import { useState } from 'react';
import { useStore } from 'zustand';
import type { Catalogue, Printer } from '../contract.ts';
import { NumberField, TextField } from '../fields/fields.tsx';
import { readLengthEntry } from '../fields/lengthEntry.ts';
import { useUnits } from '../fields/useUnits.ts';
import type { DocumentStore } from '../job/documentStore.ts';
import { freeId } from '../openings/newOpening.ts';
import { LocalField } from '../sheets/LocalField.tsx';
import { PaperField } from '../sheets/PaperField.tsx';
import { paperKey, paperOf } from '../sheets/settings.ts';
import { today } from '../text/today.ts';
import { useWords } from '../text/useWords.ts';

interface Props {
  readonly document: DocumentStore<Catalogue>;
}

/** The shop's printers: the paper in each, and what its own error is made up by. */
export function PrinterList({ document }: Props) {
  const w = useWords();
  const printers = useStore(document.store, (state) => state.document.printers) ?? [];
  const [opened, setOpened] = useState<string | null>(null);
  const add = () => {
    const id = freeId('printer-', printers);
    document.edit('printers.add', (draft) => {
      draft.printers ??= [];
      draft.printers.push({ id, name: w.printers.newName, paper: 'letter', correction: { x: 1, y: 1 } });
    });
    document.settle();
    setOpened(id);
  };
  return (
    <section id="printers">
      <h2>{w.printers.title}</h2>
      <p className="about">{w.printers.about}</p>
      {printers.length === 0 ? <p className="empty">{w.catalogue.empty}</p> : null}
      <ul className="catalogue-list">
        {printers.map((printer, index) => (
          <li key={printer.id}>
            <details open={opened === printer.id}>
              <summary>{printer.name}</summary>
              <PrinterFields document={document} printer={printer} index={index} />
            </details>
          </li>
        ))}
      </ul>
      <button type="button" onClick={add} disabled={printers.length >= 20}>
        {w.printers.add}
      </button>
    </section>
  );
}

interface PrinterProps extends Props {
  readonly printer: Printer;
  readonly index: number;
}

function PrinterFields({ document, printer, index }: PrinterProps) {
  const w = useWords();
  const key = `printers.${printer.id}`;
  const edit = (entry: string) => (change: (one: Draft<Printer>) => void) =>
    document.edit(`${key}.${entry}`, (draft) => change(draft.printers![index]!));
  return (
    <div className="catalogue-item">
      <div className="fields">
        <TextField
          document={document}
          entry={`${key}.name`}
          label={w.printers.name}
          value={printer.name}
          set={(name) => edit('name')((one) => void (one.name = name))}
        />
        <PaperField
          label={w.printers.paper}
          value={paperKey(printer.paper)}
          set={(paper) => void edit('paper')((one) => void (one.paper = paperOf(paper)))}
        />
      </div>
      <Correction document={document} printer={printer} index={index} />
      <button
        type="button"
        className="quiet"
        onClick={() => document.edit(`${key}.remove`, (draft) => void draft.printers!.splice(index, 1))}
      >
        {w.catalogue.removeItem(printer.name)}
      </button>
    </div>
  );
}

const AXES = ['x', 'y'] as const;

/** The factors, typed as they are or taken from the two bars of the test page. */
function Correction({ document, printer, index }: PrinterProps) {
  const w = useWords();
  const units = useUnits();
  const key = `printers.${printer.id}`;
  const [bars, setBars] = useState({ x: { nominal: '', measured: '' }, y: { nominal: '', measured: '' } });
  const name = { x: w.printers.across, y: w.printers.along };
  const put = (entry: string, change: (one: Draft<Printer>) => void) =>
    document.edit(`${key}.${entry}`, (draft) => change(draft.printers![index]!));
  const all = AXES.flatMap((axis) => [bars[axis].nominal, bars[axis].measured]);
  const read = (text: string) => readLengthEntry(text, units);
  const length = (text: string) => {
    const one = read(text);
    return one.ok ? one.value : Number.NaN;
  };
  const factor = (axis: 'x' | 'y') =>
    Number((length(bars[axis].nominal) / length(bars[axis].measured)).toFixed(4));
  const problem = (text: string) => {
    const one = read(text);
    return text === '' || one.ok ? null : one.sentence;
  };
  return (
    <fieldset>
      <legend>{printer.measured ? w.printers.day(printer.measured) : w.printers.never}</legend>
      {AXES.map((axis) => (
        <div key={axis} className="fields">
          {(['nominal', 'measured'] as const).map((what) => (
            <LocalField
              key={what}
              label={w.printers[what](name[axis])}
              numeric
              unit={units}
              value={bars[axis][what]}
              sentence={problem(bars[axis][what])}
              set={(text) => setBars({ ...bars, [axis]: { ...bars[axis], [what]: text } })}
            />
          ))}
          <NumberField
            document={document}
            entry={`${key}.correction.${axis}`}
            label={w.printers.factor(name[axis])}
            value={printer.correction[axis]}
            set={(value) => put(`correction.${axis}`, (one) => void (one.correction[axis] = value))}
          />
        </div>
      ))}
      <TakeMeasured
        ready={all.every((text) => length(text) > 0)}
        take={() =>
          put('correction', (one) => {
            one.correction = { x: factor('x'), y: factor('y') };
            one.measured = today();
          })?.sentence ?? null
        }
      />
      <button
        type="button"
        className="quiet"
        onClick={() =>
          put('correction', (one) => {
            one.correction = { x: 1, y: 1 };
            delete one.measured;
          })
        }
      >
        {w.printers.reset}
      </button>
    </fieldset>
  );
}

function TakeMeasured({ ready, take }: { readonly ready: boolean; readonly take: () => string | null }) {
  const w = useWords();
  const [sentence, setSentence] = useState<string | null>(null);
  return (
    <>
      <button type="button" disabled={!ready} onClick={() => setSentence(take())}>
        {w.printers.useMeasured}
      </button>
      {sentence ? (
        <p className="field-sentence" role="alert">
          {sentence}
        </p>
      ) : null}
    </>
  );
}

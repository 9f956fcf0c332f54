import { type FormEvent, useId, useState } from 'react';
import { newId } from '../app/newId.ts';
import type { LayPlan, LeftPiece, Offcut } from '../contract.ts';
import { NameField } from '../fields/NameField.tsx';
import { useMoneySign, useUnits } from '../fields/useUnits.ts';
import { useCatalogue, useJob, useWork } from '../job/work.ts';
import { showMoney, showSize } from '../text/show.ts';
import { useWords } from '../text/useWords.ts';
import { LayPicture } from './LayPicture.tsx';
import type { Stock } from './useStock.ts';

/** What each lay leaves of its cloth, and the way of each piece into stock. */
export function LeftOver({ lays, stock }: { readonly lays: readonly LayPlan[]; readonly stock: Stock }) {
  const w = useWords();
  const leaving = lays.filter(({ leaves }) => leaves.length > 0);
  return (
    <section>
      <h3>{w.offcut.left}</h3>
      <p className="about">
        {w.offcut.leftAbout} {w.offcut.worthAbout}
      </p>
      {leaving.length === 0 ? <p className="empty">{w.offcut.leftNone}</p> : null}
      {leaving.map((lay) => (
        <OfLay key={lay.lay} lay={lay} stock={stock} />
      ))}
    </section>
  );
}

/** Sizes nearer than this are one offcut, mm: a lay worked out anew leaves the same again. */
const SAME = 1;

function OfLay({ lay, stock }: { readonly lay: LayPlan; readonly stock: Stock }) {
  const w = useWords();
  const units = useUnits();
  const sign = useMoneySign();
  const { id } = useWork();
  const [open, setOpen] = useState<number | null>(null);
  const fabric = useCatalogue(({ fabrics }) => fabrics.find((one) => one.id === lay.fabric))?.name;
  const keptAs = ({ along, across }: LeftPiece) =>
    stock.offcuts.find(
      (one) =>
        one.from.job === id &&
        one.from.lay === lay.lay &&
        Math.abs(one.along - along) < SAME &&
        Math.abs(one.across - across) < SAME,
    );
  return (
    <div className="left-over">
      <h4>{w.offcut.ofLay(lay.lay, fabric ?? lay.fabric)}</h4>
      <LayPicture
        label={w.offcut.drawing(lay.lay)}
        length={lay.bought?.length ?? lay.offcut?.along ?? lay.length.value}
        lay={lay}
      />
      <ol className="left-list">
        {lay.leaves.map((piece, index) => {
          const size = showSize(piece.along, piece.across, units);
          const kept = keptAs(piece);
          return (
            <li key={`${piece.x} ${piece.y}`}>
              <b>{size}</b>, {showMoney(piece.worth, sign)}
              {kept ? (
                <>, {w.offcut.keptAs(kept.name)}</>
              ) : open === index ? (
                <KeepForm lay={lay} piece={piece} index={index} stock={stock} close={() => setOpen(null)} />
              ) : (
                <>
                  {' '}
                  <button type="button" aria-label={w.offcut.keepOf(size)} onClick={() => setOpen(index)}>
                    {w.offcut.keep}
                  </button>
                </>
              )}
            </li>
          );
        })}
      </ol>
    </div>
  );
}

interface KeepProps {
  readonly lay: LayPlan;
  readonly piece: LeftPiece;
  readonly index: number;
  readonly stock: Stock;
  readonly close: () => void;
}

function KeepForm({ lay, piece, index, stock, close }: KeepProps) {
  const w = useWords();
  const { id: job } = useWork();
  const jobName = useJob((state) => state.document.name);
  const id = useId();
  const [name, setName] = useState(`${jobName.slice(0, 40)} ${lay.lay}-${index + 1}`);
  const [place, setPlace] = useState('');
  const [batch, setBatch] = useState('');
  const [sentence, setSentence] = useState<string | null>(null);
  const submit = async (event: FormEvent) => {
    event.preventDefault();
    const called = name.trim();
    if (called === '') return setSentence(w.offcut.needName);
    if (stock.offcuts.some((one) => one.name === called)) return setSentence(w.offcut.nameTaken(called));
    const offcut: Offcut = {
      ...{ id: newId('offcut'), name: called, fabric: lay.fabric },
      ...{ along: piece.along, across: piece.across, place: place.trim(), worth: piece.worth },
      from: { job, jobName, lay: lay.lay, date: new Date().toISOString().slice(0, 10) },
      notes: '',
      ...(batch.trim() === '' ? {} : { batch: batch.trim() }),
    };
    if (await stock.change((before) => [...before, offcut], w.offcut.keptNow(called))) close();
  };
  return (
    <form className="kept-form" onSubmit={submit}>
      <NameField
        label={w.offcut.name}
        value={name}
        most={60}
        sentence={sentence}
        set={(value) => {
          setName(value);
          setSentence(null);
        }}
      />
      <NameField label={w.offcut.batch} value={batch} most={60} sentence={null} set={setBatch} />
      <div className="field">
        <label htmlFor={`${id}-place`}>{w.offcut.place}</label>
        <span className="field-line">
          <input
            id={`${id}-place`}
            value={place}
            maxLength={80}
            placeholder={w.offcut.placeExample}
            onChange={(event) => setPlace(event.target.value)}
          />
        </span>
      </div>
      <div className="buttons">
        <button type="submit" className="main-button">
          {w.offcut.keep}
        </button>
        <button type="button" onClick={close}>
          {w.offcut.cancel}
        </button>
      </div>
    </form>
  );
}

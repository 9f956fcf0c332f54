import { useEffect, useState } from 'react';
import type { CuttingPlan, Offcut, OffcutHole } from '../contract.ts';
import { useMoneySign, useUnits } from '../fields/useUnits.ts';
import { useCatalogue, useJob, useWork } from '../job/work.ts';
import { forgetPhotosBut } from '../offline/keptPhotos.ts';
import { showMoney, showSize } from '../text/show.ts';
import { useWords } from '../text/useWords.ts';
import { OffcutHoles } from './OffcutHoles.tsx';
import { OffcutLabels } from './OffcutLabels.tsx';
import { OffcutPhoto } from './OffcutPhoto.tsx';
import { PhotoButtons } from './PhotoButtons.tsx';
import type { Stock } from './useStock.ts';

/** What the last change to the stock took out, and how it is put back. */
interface Undo {
  readonly words: string;
  readonly back: () => Promise<boolean>;
}

/** All offcuts the shop keeps, and what this job makes of each. */
export function StockList({ cutting, stock }: { readonly cutting: CuttingPlan; readonly stock: Stock }) {
  const w = useWords();
  const sign = useMoneySign();
  const fabrics = useCatalogue((all) => all.fabrics);
  const nameOf = (id: string) => fabrics.find((one) => one.id === id)?.name ?? id;
  const [undo, setUndo] = useState<Undo | null>(null);
  const remove = async (offcut: Offcut) => {
    const without = (all: readonly Offcut[]) => all.filter(({ id }) => id !== offcut.id);
    const back = () => stock.change((all) => [...all, offcut], w.offcut.keptNow(offcut.name));
    if (await stock.change(without, w.offcut.removed(offcut.name))) setUndo({ words: w.offcut.undo, back });
  };
  const setPhoto = async (offcut: Offcut, photo: Offcut['photo']) => {
    const { name, photo: before } = offcut;
    const said = photo ? (before ? w.offcut.photo.replaced : w.offcut.photo.kept) : w.offcut.photo.removed;
    const put = (one: Offcut['photo'], done: string) =>
      stock.changeOne(offcut.id, (it) => withPhoto(it, one), done);
    const back = () => put(before, w.offcut.photo.kept(name));
    if (await put(photo, said(name))) setUndo(before ? { words: w.offcut.photo.putBack, back } : null);
  };
  const setHoles = async (offcut: Offcut, change: ChangeHoles, done: string) => {
    const put = (to: ChangeHoles, said: string) =>
      stock.changeOne(offcut.id, (it) => withHoles(it, to), said);
    const back = () => put(() => offcut.holes ?? [], w.offcut.holes.changed(offcut.name));
    if (await put(change, done)) setUndo({ words: w.offcut.holes.putBack, back });
  };
  useEffect(() => {
    void forgetPhotosBut(stock.offcuts.flatMap(({ photo }) => (photo ? [photo.id] : [])));
    // Once, as the list is opened: what is taken out later may still be put back.
  }, []);
  return (
    <section>
      <h3>{w.offcut.stock}</h3>
      <p className="about">{w.offcut.stockAbout}</p>
      <p className="about">{w.offcut.photo.about}</p>
      {cutting.savings.map(({ fabric, price }) => (
        <p key={fabric}>
          <strong>{w.offcut.saved(showMoney(price, sign), nameOf(fabric))}</strong>
        </p>
      ))}
      <p role="status" className="about">
        {stock.said}{' '}
        {undo ? (
          <button type="button" onClick={() => void undo.back().then((done) => done && setUndo(null))}>
            {undo.words}
          </button>
        ) : null}
      </p>
      {stock.failed ? (
        <p className="field-sentence" role="alert">
          {stock.failed}
        </p>
      ) : null}
      {stock.offcuts.length === 0 ? (
        <p className="empty">{w.offcut.stockNone}</p>
      ) : (
        <ul className="kept-list offcut-list">
          {stock.offcuts.map((offcut) => (
            <OffcutItem
              key={offcut.id}
              offcut={offcut}
              cloth={nameOf(offcut.fabric)}
              cutting={cutting}
              stock={stock}
              remove={() => void remove(offcut)}
              setPhoto={(photo) => setPhoto(offcut, photo)}
              setHoles={(change, done) => setHoles(offcut, change, done)}
            />
          ))}
        </ul>
      )}
      <OffcutLabels offcuts={stock.offcuts} />
    </section>
  );
}

const withPhoto = ({ photo: _before, ...rest }: Offcut, photo: Offcut['photo']): Offcut =>
  photo ? { ...rest, photo } : rest;

type ChangeHoles = (holes: readonly OffcutHole[]) => readonly OffcutHole[];

function withHoles({ holes: before = [], ...rest }: Offcut, change: ChangeHoles): Offcut {
  const holes = change(before);
  return holes.length > 0 ? { ...rest, holes: [...holes] } : rest;
}

interface ItemProps {
  readonly offcut: Offcut;
  readonly cloth: string;
  readonly cutting: CuttingPlan;
  readonly stock: Stock;
  readonly remove: () => void;
  readonly setPhoto: (photo: Offcut['photo']) => Promise<void>;
  readonly setHoles: (change: ChangeHoles, done: string) => Promise<void>;
}

function OffcutItem({ offcut, cloth, cutting, stock, remove, setPhoto, setHoles }: ItemProps) {
  const w = useWords();
  const units = useUnits();
  const sign = useMoneySign();
  const { job, id: jobId } = useWork();
  const jobName = useJob((state) => state.document.name);
  const leftBe = useJob((state) => state.document.offcutsLeftBe?.includes(offcut.id) ?? false);
  const lay = cutting.lays.find((one) => one.offcut?.id === offcut.id);
  const { name, from, used } = offcut;
  const label = (action: string) => w.offcut.of(action, name);
  const leaveBe = (leave: boolean) => {
    job.edit(`offcut.${offcut.id}.${leave}`, (draft) => {
      const others = (draft.offcutsLeftBe ?? []).filter((one) => one !== offcut.id);
      draft.offcutsLeftBe = leave ? [...others, offcut.id] : others;
    });
    job.settle();
  };
  const mark = (cut: boolean) => {
    const date = new Date().toISOString().slice(0, 10);
    const marked = ({ used: _before, ...rest }: Offcut): Offcut =>
      cut ? { ...rest, used: { job: jobId, jobName, date } } : rest;
    void stock.changeOne(offcut.id, marked, '');
  };
  const s = w.offcut.states;
  const state =
    used && used.job !== jobId
      ? s.other(used.jobName)
      : from.job === jobId
        ? s.own
        : leftBe
          ? s.leftBe
          : lay
            ? used
              ? `${s.used(lay.lay)}, ${s.cut}`
              : s.used(lay.lay)
            : s.free;
  return (
    <li>
      {offcut.photo ? <OffcutPhoto photo={offcut.photo} name={name} /> : null}
      <div>
        <p>
          <b>{name}</b>: {showSize(offcut.along, offcut.across, units)}, {cloth},{' '}
          {showMoney(offcut.worth, sign)}
          {offcut.place ? `, ${offcut.place}` : ''}.{' '}
          <span className="about">
            {w.offcut.from} “{from.jobName}”, {from.date}; {state}.
          </span>
        </p>
        <span className="buttons">
          {lay ? (
            <button type="button" aria-label={label(w.offcut.leaveBe)} onClick={() => leaveBe(true)}>
              {w.offcut.leaveBe}
            </button>
          ) : null}
          {leftBe ? (
            <button type="button" aria-label={label(w.offcut.tryAgain)} onClick={() => leaveBe(false)}>
              {w.offcut.tryAgain}
            </button>
          ) : null}
          {lay && !used ? (
            <button type="button" aria-label={label(w.offcut.markCut)} onClick={() => mark(true)}>
              {w.offcut.markCut}
            </button>
          ) : null}
          {used?.job === jobId ? (
            <button type="button" aria-label={label(w.offcut.notCut)} onClick={() => mark(false)}>
              {w.offcut.notCut}
            </button>
          ) : null}
          <PhotoButtons offcut={offcut} set={setPhoto} />
          <button type="button" aria-label={label(w.offcut.removeIt)} onClick={remove}>
            {w.offcut.removeIt}
          </button>
        </span>
        <OffcutHoles offcut={offcut} set={setHoles} />
      </div>
    </li>
  );
}

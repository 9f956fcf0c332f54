import { useMemo, useState } from 'react';
import { newId } from '../app/newId.ts';
import { type KeptLay, type LayPlan, type WeighedLay, weighLay } from '../contract.ts';
import { useMoneySign, useUnits } from '../fields/useUnits.ts';
import { useCatalogue, useJob, useWork } from '../job/work.ts';
import { showLength, showMoney, showPercent } from '../text/show.ts';
import { useWords } from '../text/useWords.ts';
import { LayPicture } from './LayPicture.tsx';
import type { LayOnPage } from './useLay.ts';

interface Props {
  readonly lay: LayPlan;
  readonly page: LayOnPage;
}

const NONE: readonly KeptLay[] = [];

/** Lays of the same pieces side by side: what each takes, costs and leaves; one put aside is taken again. */
export function CompareLays({ lay, page }: Props) {
  const w = useWords();
  const all = useJob((state) => state.document.keptLays) ?? NONE;
  const least = useCatalogue(({ habits }) => habits.leastOffcut);
  const [shown, show] = useState<string | null>(null);
  const { keep, use, remove } = useKept(lay, page);
  const rows = useMemo(() => {
    const weigh = (width: number, places: Parameters<typeof weighLay>[1]) =>
      weighLay({ ...page.frame, rollWidth: width }, places, least);
    const kept = all.filter((one) => one.lay.fabric === lay.fabric);
    return {
      now: weigh(lay.rollWidth, page.places),
      kept: kept.map((one) => ({ one, weighed: weigh(one.lay.rollWidth, one.lay.places) })),
    };
  }, [all, least, lay, page.frame, page.places]);
  const { now } = rows;
  const beside = rows.kept.find(({ one }) => one.id === shown)?.weighed;
  return (
    <section>
      <h3>{w.compare.title(lay.lay)}</h3>
      <p className="about">{w.compare.about}</p>
      <button type="button" disabled={!now.ok} onClick={keep}>
        {w.compare.keep}
      </button>
      {rows.kept.length === 0 ? null : (
        <div className="table-frame">
          <table>
            <Head />
            <tbody>
              <Row name={w.compare.now} weighed={now.ok ? now.value : null} than={null} />
              {rows.kept.map(({ one, weighed }) => (
                <Row
                  key={one.id}
                  name={one.name}
                  weighed={weighed.ok ? weighed.value : null}
                  than={now.ok ? now.value : null}
                >
                  <button
                    type="button"
                    className="quiet"
                    aria-pressed={shown === one.id}
                    aria-label={w.offcut.of(w.compare.show, one.name)}
                    disabled={!weighed.ok}
                    onClick={() => show(shown === one.id ? null : one.id)}
                  >
                    {w.compare.show}
                  </button>
                  <button
                    type="button"
                    className="quiet"
                    aria-label={w.offcut.of(w.compare.use, one.name)}
                    disabled={!weighed.ok}
                    onClick={() => use(one)}
                  >
                    {w.compare.use}
                  </button>
                  <button
                    type="button"
                    className="quiet"
                    aria-label={w.offcut.of(w.compare.remove, one.name)}
                    onClick={() => remove(one)}
                  >
                    {w.compare.remove}
                  </button>
                </Row>
              ))}
            </tbody>
          </table>
        </div>
      )}
      {now.ok && beside?.ok ? <SideBySide now={now.value} beside={beside.value} /> : null}
    </section>
  );
}

function useKept(lay: LayPlan, page: LayOnPage) {
  const w = useWords();
  const units = useUnits();
  const { job } = useWork();
  const change = (key: string, to: (kept: readonly KeptLay[]) => readonly KeptLay[]) => {
    job.edit(`keptLay.${key}`, (draft) => {
      const next = to(draft.keptLays ?? []);
      if (next.length > 0) draft.keptLays = [...next] as typeof draft.keptLays;
      else delete draft.keptLays;
    });
    job.settle();
  };
  return {
    keep: () => {
      const id = newId('lay');
      const length = showLength(lay.length.value, units);
      change(id, (kept) => {
        const name = w.compare.name(kept.length + 1, length).slice(0, 60);
        const of = { fabric: lay.fabric, rollWidth: lay.rollWidth, places: [...page.places] };
        return [...kept, { id, name, lay: of }];
      });
    },
    remove: ({ id }: KeptLay) => change(id, (kept) => kept.filter((one) => one.id !== id)),
    // Held, so that it stands although another lay may be cheaper.
    use: ({ id, lay: kept }: KeptLay) => {
      job.edit(`keptLay.use.${id}`, (draft) => {
        const others = (draft.laysByHand ?? []).filter((one) => one.fabric !== kept.fabric);
        const places = kept.places.map((place) => ({ ...place, held: true }));
        draft.laysByHand = [...others, { ...kept, places }];
      });
      job.settle();
    },
  };
}

function Head() {
  const w = useWords();
  return (
    <thead>
      <tr>
        <th scope="col">{w.compare.lay}</th>
        <th scope="col" className="number">
          {w.cutting.width}
        </th>
        <th scope="col" className="number">
          {w.cutting.length}
        </th>
        <th scope="col" className="number">
          {w.cutting.cost}
        </th>
        <th scope="col" className="number">
          {w.cutting.density}
        </th>
        <th scope="col" className="number">
          {w.compare.leaves}
        </th>
        <th scope="col">
          <span className="only-heard">{w.compare.actions}</span>
        </th>
      </tr>
    </thead>
  );
}

interface RowProps {
  readonly name: string;
  /** null: it fits the job no longer. */
  readonly weighed: WeighedLay | null;
  /** The lay it is set beside. */
  readonly than: WeighedLay | null;
  readonly children?: React.ReactNode;
}

function Row({ name, weighed, than, children }: RowProps) {
  const w = useWords();
  const units = useUnits();
  const sign = useMoneySign();
  if (!weighed)
    return (
      <tr>
        <th scope="row">{name}</th>
        <td colSpan={5}>{w.compare.fitsNoLonger}</td>
        <td>{children}</td>
      </tr>
    );
  const more = than ? weighed.length - than.length : 0;
  const worth = weighed.leaves.reduce((sum, one) => sum + one.worth, 0);
  return (
    <tr>
      <th scope="row">{name}</th>
      <td className="number">{showLength(weighed.rollWidth, units)}</td>
      <td className="number">
        {showLength(weighed.length, units)}
        {Math.abs(more) > 0.5
          ? ` (${(more > 0 ? w.compare.longer : w.compare.shorter)(showLength(Math.abs(more), units))})`
          : ''}
      </td>
      <td className="number">{weighed.bought ? showMoney(weighed.bought.price, sign) : w.compare.notSold}</td>
      <td className="number">{showPercent(weighed.density)}</td>
      <td className="number">{w.compare.left(weighed.leaves.length, showMoney(worth, sign))}</td>
      <td>{children}</td>
    </tr>
  );
}

function SideBySide({ now, beside }: { readonly now: WeighedLay; readonly beside: WeighedLay }) {
  const w = useWords();
  // To one scale: both show the longer one's length.
  const length = Math.max(...[now, beside].map((one) => one.bought?.length ?? one.length));
  return (
    <div className="side-by-side">
      <LayPicture label={w.compare.now} length={length} lay={now} />
      <LayPicture label={w.compare.lay} length={length} lay={beside} />
    </div>
  );
}

import { useState } from 'react';
import { type CutPiece, drawPlaces, type LayPlan } from '../contract.ts';
import { FigureList } from '../fields/FigureList.tsx';
import { useMoneySign, useUnits } from '../fields/useUnits.ts';
import { useCatalogue } from '../job/work.ts';
import { showLength, showMoney, showPercent } from '../text/show.ts';
import { useWords } from '../text/useWords.ts';
import { CompareLays } from './CompareLays.tsx';
import { LayDrawing } from './LayDrawing.tsx';
import { LayHand } from './LayHand.tsx';
import { LayReason } from './LayReason.tsx';
import { LongerLay } from './LongerLay.tsx';
import type { LongerAnswer } from './layLonger.worker.ts';
import { ReservedPlaces } from './ReservedPlaces.tsx';
import { type LayOnPage, useLay } from './useLay.ts';

interface Props {
  readonly lay: LayPlan;
  readonly pieces: readonly CutPiece[];
  readonly stale: boolean;
}

const MOST_ENLARGED = 6;

/** One cloth: its lay, large enough to work on, and what there is to say and do about it. */
export function LaySection({ lay, pieces, stale }: Props) {
  const w = useWords();
  const page = useLay(lay, pieces);
  const fabric = useCatalogue(({ fabrics }) => fabrics.find(({ id }) => id === lay.fabric));
  const [enlarged, enlarge] = useState(1);
  const [found, setFound] = useState<LongerAnswer | null>(null);
  if (!page) return null;
  return (
    <>
      <section className="stage">
        <div className="stage-drawing">
          <div className="lay-frame">
            <div style={{ width: `${enlarged * 100}%` }}>
              <LayDrawing
                lay={found ? { ...lay, length: { ...lay.length, value: found.length } } : lay}
                page={found ? watched(page, found) : page}
                stale={stale}
              />
            </div>
          </div>
          <div className="buttons">
            <button
              type="button"
              className="quiet"
              disabled={enlarged >= MOST_ENLARGED}
              onClick={() => enlarge(enlarged * 1.5)}
            >
              {w.lay.larger}
            </button>
            <button
              type="button"
              className="quiet"
              disabled={enlarged <= 1}
              onClick={() => enlarge(Math.max(1, enlarged / 1.5))}
            >
              {w.lay.smaller}
            </button>
          </div>
        </div>
        <div className="stage-side">
          <h3>{w.cutting.lay(lay.lay, fabric?.name ?? lay.fabric)}</h3>
          <LayFigures lay={lay} page={page} />
          <LayReason lay={lay} page={page} />
          <LongerLay lay={lay} page={page} show={setFound} />
          <LayHand lay={lay} page={page} />
          <ReservedPlaces lay={lay} />
        </div>
      </section>
      <CompareLays lay={lay} page={page} />
    </>
  );
}

/** A lay that is only watched: nothing in it is moved. */
const watched = (page: LayOnPage, found: LongerAnswer): LayOnPage => ({
  ...page,
  places: found.places,
  drawn: drawPlaces(page.frame, found.places),
  chosen: null,
  put: () => null,
  hold: () => {},
});

function LayFigures({ lay, page }: { readonly lay: LayPlan; readonly page: LayOnPage }) {
  const w = useWords();
  const units = useUnits();
  const sign = useMoneySign();
  const ends = page.places.filter((_, k) => {
    const at = page.drawn[k];
    return at && lay.binds.some(({ piece, copy }) => piece === at.piece && copy === at.copy);
  });
  const automatic = lay.byHand?.automatic;
  return (
    <>
      <FigureList
        rows={[
          [w.cutting.length, lay.length],
          [w.cutting.roll, showLength(lay.rollWidth, units)],
          [w.cutting.least, showLength(lay.leastLength, units)],
          [w.lay.endsWith, ends.map(page.nameOf).join(', ')],
          [w.cutting.density, showPercent(lay.density)],
          ...(automatic
            ? [
                [
                  w.lay.automaticLabel,
                  w.lay.automatic(
                    showLength(automatic.length, units),
                    showLength(automatic.rollWidth, units),
                  ),
                ] as const,
              ]
            : []),
        ]}
      />
      {lay.otherWidths.length > 0 ? (
        <table>
          <caption>{w.cutting.widths}</caption>
          <thead>
            <tr>
              <th scope="col">{w.cutting.width}</th>
              <th scope="col" className="number">
                {w.cutting.length}
              </th>
              <th scope="col" className="number">
                {w.cutting.cost}
              </th>
            </tr>
          </thead>
          <tbody>
            {lay.otherWidths.map((other) => (
              <tr key={other.rollWidth}>
                <th scope="row">{showLength(other.rollWidth, units)}</th>
                <td className="number">{showLength(other.length, units)}</td>
                <td className="number">{showMoney(other.price, sign)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      ) : null}
    </>
  );
}

import { Late } from '../app/Late.tsx';
import { useCurrent } from '../app/useCurrent.ts';
import type { CutPiece, CuttingPlan, StripPlan } from '../contract.ts';
import { useUnits } from '../fields/useUnits.ts';
import { StageFindings } from '../findings/StageFindings.tsx';
import { useCatalogue, usePlan } from '../job/work.ts';
import { showLength } from '../text/show.ts';
import { useWords } from '../text/useWords.ts';
import { CuttingRules, OF_RULES } from './CuttingRules.tsx';
import { LaySection } from './LaySection.tsx';
import { LeftOver } from './LeftOver.tsx';
import { OffcutLay } from './OffcutLay.tsx';
import { piecesOf } from './piecesOf.ts';
import { StockList } from './StockList.tsx';
import { useStock } from './useStock.ts';

/** How everything is cut: the lay on each roll, and the strips. */
export function CuttingStage() {
  const w = useWords();
  const { stale } = useCurrent();
  const cutting = usePlan((state) => state.late?.cutting);
  const any = cutting && (cutting.lays.length > 0 || cutting.pieces.length > 0);
  return (
    <Late>
      <h2>{w.cutting.title}</h2>
      <StageFindings stage="cutting" without={OF_RULES} />
      {any ? null : <p className="empty">{w.cutting.empty}</p>}
      {cutting?.lays.map((lay) =>
        lay.offcut ? (
          <OffcutLay
            key={lay.lay}
            lay={{ ...lay, offcut: lay.offcut }}
            pieces={cutting.pieces}
            stale={stale}
          />
        ) : (
          <LaySection key={lay.lay} lay={lay} pieces={piecesOf(cutting, lay)} stale={stale} />
        ),
      )}
      {any ? <Pieces pieces={cutting.pieces} /> : null}
      {any ? <CuttingRules /> : null}
      {any ? <Offcuts cutting={cutting} /> : null}
      {cutting && cutting.strips.length > 0 ? <Strips strips={cutting.strips} /> : null}
    </Late>
  );
}

function Offcuts({ cutting }: { readonly cutting: CuttingPlan }) {
  const stock = useStock();
  return (
    <>
      <LeftOver lays={cutting.lays} stock={stock} />
      <StockList cutting={cutting} stock={stock} />
    </>
  );
}

function Pieces({ pieces }: { readonly pieces: readonly CutPiece[] }) {
  const w = useWords();
  return (
    <section>
      <h3>{w.cutting.pieces}</h3>
      <div className="table-frame">
        <table>
          <thead>
            <tr>
              <th scope="col">{w.cutting.piece}</th>
              <th scope="col" className="number">
                {w.cutting.count}
              </th>
              <th scope="col">{w.cutting.for}</th>
            </tr>
          </thead>
          <tbody>
            {pieces.map((piece) => (
              <tr key={piece.piece}>
                <th scope="row">
                  {piece.kind === 'panel'
                    ? w.cutting.panelOf(piece.pattern)
                    : w.cutting.pocketOf(piece.piece)}
                  {piece.turnedOver ? `, ${w.cutting.turnedOver}` : ''}
                </th>
                <td className="number">{piece.count}</td>
                <td>
                  {piece.kind === 'panel' ? piece.openings.join(', ') : piece.pattern.split(' ').join(', ')}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </section>
  );
}

function Strips({ strips }: { readonly strips: readonly StripPlan[] }) {
  const w = useWords();
  const units = useUnits();
  const catalogue = useCatalogue((all) => all);
  const nameOf = ({ kind, material }: StripPlan) => {
    const list =
      kind === 'binding' ? catalogue.bindings : kind === 'tape' ? catalogue.tapes : catalogue.wrapFilms;
    return list.find((one) => one.id === material)?.name ?? material;
  };
  return (
    <section>
      <h3>{w.cutting.strips}</h3>
      {strips.map((strip) => (
        <div key={`${strip.kind}.${strip.material}`}>
          <h4>
            {w.cutting.strip[strip.kind]}: {nameOf(strip)}
          </h4>
          <ol className="strips">
            {strip.stocks.map((stock, index) => (
              // Lengths of stock are alike; their number is their name.
              <li key={index}>
                <b>{w.cutting.stock(index + 1, showLength(strip.stockLength, units))}</b>:{' '}
                {w.cutting.left(showLength(stock.left, units))}
                <ul className="cuts">
                  {stock.cuts.map((cut, n) => (
                    // Cuts for one panel are alike; their order is the order of cutting.
                    <li key={n}>
                      {cut.for} <span className="cut-length">{showLength(cut.length, units)}</span>
                    </li>
                  ))}
                </ul>
              </li>
            ))}
          </ol>
        </div>
      ))}
    </section>
  );
}

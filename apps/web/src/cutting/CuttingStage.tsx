import { Late } from '../app/Late.tsx';
import { useCurrent } from '../app/useCurrent.ts';
import type { CutPiece, LayPlan, StripPlan } from '../contract.ts';
import { FigureList } from '../fields/FigureList.tsx';
import { useMoneySign, useUnits } from '../fields/useUnits.ts';
import { StageFindings } from '../findings/StageFindings.tsx';
import { useCatalogue, usePlan } from '../job/work.ts';
import { showLength, showMoney, showPercent } from '../text/show.ts';
import { useWords } from '../text/useWords.ts';
import { LayDrawing } from './LayDrawing.tsx';

/** How everything is cut: the lay on each roll, and the strips. */
export function CuttingStage() {
  const w = useWords();
  const { stale } = useCurrent();
  const cutting = usePlan((state) => state.late?.cutting);
  const fabrics = useCatalogue((catalogue) => catalogue.fabrics);
  const nameOf = (id: string) => fabrics.find((one) => one.id === id)?.name ?? id;
  const any = cutting && (cutting.lays.length > 0 || cutting.pieces.length > 0);
  return (
    <Late>
      <h2>{w.cutting.title}</h2>
      <StageFindings stage="cutting" />
      {any ? null : <p className="empty">{w.cutting.empty}</p>}
      {cutting?.lays.map((lay) => (
        <section key={lay.lay} className="stage">
          <div className="stage-drawing">
            <LayDrawing lay={lay} pieces={cutting.pieces} stale={stale} />
          </div>
          <div className="stage-side">
            <h3>{w.cutting.lay(lay.lay, nameOf(lay.fabric))}</h3>
            <LayFigures lay={lay} />
          </div>
        </section>
      ))}
      {any ? <Pieces pieces={cutting.pieces} /> : null}
      {cutting && cutting.strips.length > 0 ? <Strips strips={cutting.strips} /> : null}
    </Late>
  );
}

function LayFigures({ lay }: { readonly lay: LayPlan }) {
  const w = useWords();
  const units = useUnits();
  const sign = useMoneySign();
  return (
    <>
      <FigureList
        rows={[
          [w.cutting.length, lay.length],
          [w.cutting.roll, showLength(lay.rollWidth, units)],
          [w.cutting.least, showLength(lay.leastLength, units)],
          [w.cutting.density, showPercent(lay.density)],
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

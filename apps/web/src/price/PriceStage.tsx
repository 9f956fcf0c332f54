import { Late } from '../app/Late.tsx';
import type { PricePlan } from '../contract.ts';
import { FigureList } from '../fields/FigureList.tsx';
import { useMoneySign } from '../fields/useUnits.ts';
import { useJob, usePlan } from '../job/work.ts';
import { showMoney, showPercent } from '../text/show.ts';
import { useWords } from '../text/useWords.ts';
import { CostPlot } from './CostPlot.tsx';

/** Cost, price, margin, and what each opening bears of it. */
export function PriceStage() {
  const w = useWords();
  const price = usePlan((state) => state.late?.price);
  return (
    <Late>
      <div className="stage stage-single">
        <h2>{w.price.title}</h2>
        {price && price.price.value > 0 ? (
          <div className="two-columns">
            <section>
              <h3>{w.price.parts}</h3>
              <FigureList
                rows={[
                  [w.price.material, price.material],
                  [w.price.labour, price.labour],
                  [w.price.overhead, price.overhead],
                  [w.price.cost, price.cost],
                  [w.price.price, price.price],
                  [w.price.tax, price.tax],
                  [w.price.total, price.total],
                  [w.price.margin, showPercent(price.margin)],
                ]}
              />
              <h3>{w.bench.costPlot}</h3>
              <CostPlot price={price} />
            </section>
            <Shares price={price} />
          </div>
        ) : (
          <p className="empty">{w.price.empty}</p>
        )}
      </div>
    </Late>
  );
}

function Shares({ price }: { readonly price: PricePlan }) {
  const w = useWords();
  const sign = useMoneySign();
  const openings = useJob((state) => state.document.openings);
  return (
    <table>
      <caption>{w.price.byOpening}</caption>
      <thead>
        <tr>
          <th scope="col">{w.price.opening}</th>
          <th scope="col" className="number">
            {w.price.price}
          </th>
        </tr>
      </thead>
      <tbody>
        {price.byOpening.map((share) => (
          <tr key={share.opening}>
            <th scope="row">
              {share.opening} {openings.find((one) => one.id === share.opening)?.name}
            </th>
            <td className="number">{showMoney(share.price, sign)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

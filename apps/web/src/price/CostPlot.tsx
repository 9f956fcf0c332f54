import type { PricePlan } from '../contract.ts';
import { useMoneySign } from '../fields/useUnits.ts';
import { showMoney } from '../text/show.ts';
import { useWords } from '../text/useWords.ts';

/** How the price comes about: each part begins where the one before it ends. The figures stand beside it as a list. */
export function CostPlot({ price }: { readonly price: PricePlan }) {
  const w = useWords();
  const sign = useMoneySign();
  const parts = [
    [w.price.material, price.material.value],
    [w.price.labour, price.labour.value],
    [w.price.overhead, price.overhead.value],
    [w.bench.left, price.price.value - price.cost.value],
  ] as const;
  const most = Math.max(price.price.value, price.cost.value);
  const share = (value: number) => `${((100 * value) / most).toFixed(2)}%`;
  let from = 0;
  const said = parts.map(([name, value]) => `${name} ${showMoney(value, sign)}`).join(', ');
  return (
    <div className="cost-plot" role="img" aria-label={`${w.bench.costPlot}: ${said}`}>
      {parts.map(([name, value]) => {
        const start = Math.min(from, from + value);
        from += value;
        return (
          <div key={name} className="cost-row">
            <span>{name}</span>
            <span className="cost-track">
              <span
                className={`cost-bar${value < 0 ? ' cost-lost' : ''}`}
                style={{ insetInlineStart: share(start), inlineSize: share(Math.abs(value)) }}
              />
            </span>
            <span className="number">{`${Math.round((100 * value) / (price.price.value || 1))} %`}</span>
          </div>
        );
      })}
    </div>
  );
}

import {
  type BenchmarkJson,
  benchmarkInstance,
  cutStrips,
  type Instance,
  pack,
  startPacking,
  step,
  verifyLay,
} from '@panewright/packing';
import { mm } from '@panewright/quantity';
import albano from './reference/albano.json' with { type: 'json' };
import cuttingStock from './reference/cuttingStock.json' with { type: 'json' };
import panelsMixed from './reference/panelsMixed.json' with { type: 'json' };

const garment = benchmarkInstance(albano as BenchmarkJson);
const panels = benchmarkInstance(panelsMixed as BenchmarkJson);

/** A new object each time, so that nothing derived from an earlier run is found again. */
const fresh = (instance: Instance): Instance => ({ ...instance });

function lengthAfter(instance: Instance, budget: number): number {
  const result = pack(instance, budget, 1);
  if (!result.ok) throw new Error(result.refusal.code);
  return result.value.length;
}

function warm(instance: Instance) {
  const started = startPacking(instance, 1, 5_000_000);
  if (!started.ok) throw new Error(started.refusal.code);
  return step(started.value, 2_000_000);
}

const searching = warm(garment);
const lay = searching.best;
const order = cuttingStock.families.find(({ family }) => family === 'falkenauer_u')!.instances[0]!;

/** Times only; densities by time are printed by packages/packing/bench/lays.mjs. */
export const benches = [
  { name: 'first lay of 43 panels and pockets', run: () => lengthAfter(fresh(panels), 0) },
  { name: 'first lay of albano (24 pieces)', run: () => lengthAfter(fresh(garment), 0) },
  {
    name: 'search on albano, evaluations',
    run: () => step(searching, 200_000).evaluations,
    unit: 'evaluations',
    perRun: 200_000,
  },
  { name: 'check of a lay of albano', run: () => Number(verifyLay(garment, lay).ok) },
  {
    name: `cutting plan of ${order.name} (120 lengths)`,
    run: () => {
      const items = order.items.map(([length, demand], id) => ({ id, length: mm(length!), demand: demand! }));
      const stocks = [{ id: 'roll', length: mm(order.stockLength), cost: 1 }];
      const plan = cutStrips({ kerf: mm(0), stocks, items });
      return plan.ok ? plan.value.pieces : 0;
    },
  },
];

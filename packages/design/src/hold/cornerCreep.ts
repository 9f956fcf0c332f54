import type { Finding } from '../plan/finding.ts';
import type { HoldPlan, OpeningPlan } from '../plan/plan.ts';

/**
 * The opening whose hold points give first by the mechanics of the edge, where that is in the wind the job is to stand.
 * One for the whole job: it hangs on the slack of the cloth, which nobody has measured, and is alike for all panels.
 */
export function cornerCreep(hold: readonly HoldPlan[], openings: readonly OpeningPlan[]): Finding[] {
  const all = hold
    .flatMap((plan) => plan.openings)
    .flatMap(({ opening, letsGo, margin }) => {
      // A panel its magnets cannot hold at all has its own finding.
      if (!margin || margin.low < 1) return [];
      const wind = openings.find((one) => one.opening === opening)!.choices.weather.wind;
      const { low = null, high = null, weakest = 0 } = letsGo ?? {};
      return low === null || high === null || low >= wind ? [] : [{ opening, low, high, wind, weakest }];
    });
  const [worst] = all.sort((a, b) => a.low / a.wind - b.low / b.wind);
  if (!worst) return [];
  const { opening, weakest, low, high, wind } = worst;
  return [
    {
      severity: 'doubt',
      code: 'CORNER_MAY_CREEP',
      where: {},
      numbers: { opening, point: weakest, low, high, wind },
    },
  ];
}

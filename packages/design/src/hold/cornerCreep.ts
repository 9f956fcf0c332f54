import type { Catalogue } from '../document/catalogue.ts';
import type { Finding } from '../plan/finding.ts';
import type { HoldPlan, OpeningPlan } from '../plan/plan.ts';
import { clothOf } from './holdDetails.ts';

/**
 * The opening whose hold points give first by the mechanics of the edge, where that is in the wind the job is to stand.
 * One for the whole job: it hangs on the slack of the cloth, a habit of the shop or a guess, and is alike for all panels.
 */
export function cornerCreep(
  hold: readonly HoldPlan[],
  openings: readonly OpeningPlan[],
  habits: Catalogue['habits'],
): Finding[] {
  const all = hold
    .flatMap((plan) => plan.openings)
    .flatMap(({ opening, letsGo, margin }) => {
      // A panel its magnets cannot hold at all has its own finding.
      if (!margin || margin.low < 1) return [];
      const wind = openings.find((one) => one.opening === opening)!.choices.weather.wind;
      const { low = null, high = null, weakest = 0 } = letsGo ?? {};
      return low === null || high === null || low >= wind
        ? []
        : [{ opening, low, high, wind, weakest, whole: margin.letsGoAt }];
    });
  const [worst] = all.sort((a, b) => a.low / a.wind - b.low / b.wind);
  if (!worst) return [];
  const { opening, weakest, low, high, wind, whole } = worst;
  const { slack } = clothOf(habits);
  return [
    {
      severity: 'doubt',
      code: 'CORNER_MAY_CREEP',
      where: {},
      numbers: {
        ...{ opening, point: weakest, low, high, wind, whole },
        ...{ slackLow: 100 * slack.low, slackHigh: 100 * slack.high },
      },
    },
  ];
}

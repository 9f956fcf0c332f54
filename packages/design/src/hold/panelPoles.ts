import type { PoleOut } from '@panewright/magnets';
import type { Materials } from '../derive/materials.ts';
import { remember } from '../derive/remember.ts';
import type { Find } from '../plan/finding.ts';
import type { HoldPoint, PanelPlan } from '../plan/plan.ts';
import { faceRadius } from './faceOf.ts';
import { type PolePlan, polesFor, type WrongWay } from './poles.ts';

interface PoleContext {
  readonly points: readonly Pick<HoldPoint, 'centre'>[];
  readonly pattern: string;
  readonly keyed: boolean;
  readonly first: PoleOut;
  readonly within: number;
  readonly holder: Materials['holder']['kind'];
}

/** Poles of a panel's points, keyed where the job asks for it and a key can be had; `places` stays the same object while the points do. */
export const panelPoles = remember(
  (_places: object, { points, pattern, keyed, first, within, holder }: PoleContext, find): PanelPoles => {
    const centres = points.map(({ centre }) => centre);
    const uniform = { way: 'uniform' as const, plan: alike(centres.length, first) };
    if (!keyed) return uniform;
    const cannot = (because: 'tooFew' | 'alike' | 'steel' | 'fastener') => {
      const where = { pattern };
      find({
        severity: 'doubt',
        code: 'POLES_CANNOT_KEY',
        where,
        numbers: { points: centres.length, because },
      });
      return uniform;
    };
    if (holder !== 'magnets') return cannot(holder);
    const poles = polesFor(centres, 'keyed', first, within);
    if (poles.ok) {
      reportWorst(poles.value, pattern, find);
      return { way: 'keyed', plan: poles.value };
    }
    return cannot(poles.refusal.code === 'TOO_FEW_POINTS_TO_KEY' ? 'tooFew' : 'alike');
  },
  (a, b) => a.keyed === b.keyed && a.first === b.first && a.within === b.within && a.holder === b.holder,
);

export interface PanelPoles {
  readonly way: 'uniform' | 'keyed';
  readonly plan: PolePlan;
}

export const poleContext = (
  points: readonly Pick<HoldPoint, 'centre'>[],
  { pattern, choices: { hold } }: PanelPlan,
  { holder, outside }: Materials,
): PoleContext => ({
  points,
  pattern,
  keyed: hold.poles === 'keyed',
  first: hold.poleOut,
  within: faceRadius(outside),
  holder: holder.kind,
});

/** Puts the wrong way that holds best in words: to be looked at where more points draw than push off. */
function reportWorst({ panelOut, wrongWays }: PolePlan, pattern: string, find: Find): void {
  const held = ({ drawn, meet }: WrongWay) => 2 * drawn - meet;
  const worst = wrongWays.reduce<WrongWay | null>(
    (best, one) => (best && held(best) >= held(one) ? best : one),
    null,
  );
  if (!worst || worst.drawn === 0) return;
  const { turnedOver, turn, meet, drawn } = worst;
  find({
    severity: held(worst) > 0 ? 'doubt' : 'note',
    code: 'KEYED_WRONG_WAY',
    where: { pattern },
    numbers: { points: panelOut.length, over: turnedOver ? 1 : 0, turn, meet, drawn },
  });
}

/** The same pole out at every point. */
function alike(points: number, first: PoleOut): PolePlan {
  const other = first === 'north' ? 'south' : 'north';
  return {
    panelOut: Array.from({ length: points }, () => first),
    insideOut: Array.from({ length: points }, () => other),
    wrongWays: [],
    net: points,
  };
}

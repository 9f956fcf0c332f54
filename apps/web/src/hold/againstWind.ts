import {
  type HeldPoint,
  type PanelHeld,
  type WindMargin,
  type WindMargins,
  windCurve,
  windMargins,
} from '../contract.ts';

/** What wind does to a panel. */
export interface AgainstWind extends Pick<WindMargins, 'letsGo' | 'points'> {
  /** Margins at every wind of the plot, worked out when first asked for: the plot may come after the rest. */
  readonly curve: () => readonly WindMargin[];
}

type Load = PanelHeld['load'];

/** Winds of the plot, m/s: from calm to well past what is asked. */
const STEPS = 40;
const windsFor = ({ wind, gustFactor }: Load): readonly number[] => {
  const most = Math.min(5 * Math.ceil(Math.max(15, 1.6 * wind) / 5), 100 / gustFactor);
  return Array.from({ length: STEPS + 1 }, (_, k) => (k * most) / STEPS);
};

let lastly: { readonly of: string; readonly found: AgainstWind | null } | null = null;

/** The same object while only the wind the job is to stand moves within the plot; null where the panel is refused. */
export function againstWind(points: readonly HeldPoint[], load: Load): AgainstWind | null {
  const winds = windsFor(load);
  const of = JSON.stringify([points, { ...load, wind: 0 }, winds.at(-1)]);
  if (lastly?.of !== of) lastly = { of, found: anew(points, load, winds) };
  return lastly.found;
}

function anew(points: readonly HeldPoint[], load: Load, winds: readonly number[]): AgainstWind | null {
  const ends = windMargins(points, load, []);
  if (!ends.ok) return null;
  let curve: readonly WindMargin[] | null = null;
  const drawn = () => {
    const found = windCurve(points, load, winds);
    return found.ok ? found.value : [];
  };
  return {
    letsGo: ends.value.letsGo,
    points: ends.value.points,
    curve: () => {
      curve ??= drawn();
      return curve;
    },
  };
}

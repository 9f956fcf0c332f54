import type { Ends, HoldFigure, HoldPanel, PanelHoldRefusal } from './holdPanel.ts';

const LEAST_POINTS = 3;
/** Smallest figure that counts as above nothing. */
const ABOVE_ZERO = 1e-9;
const LARGE = 1e9;

const RANGES: { readonly [figure in HoldFigure]: readonly [least: number, most: number] } = {
  x: [-LARGE, LARGE],
  y: [-LARGE, LARGE],
  pull: [ABOVE_ZERO, LARGE],
  breakAway: [0, LARGE],
  friction: [0, 1.5],
  face: [ABOVE_ZERO, LARGE],
  load: [0, 5],
  area: [ABOVE_ZERO, LARGE],
  weight: [0, LARGE],
  lean: [-Math.PI / 2, Math.PI / 2],
  pressure: [0, 10_000],
  airDensity: [0.5, 2],
  stiffness: [ABOVE_ZERO, LARGE],
  slack: [0, 0.1],
  arm: [0, 1000],
};

function figureRefusal(figure: HoldFigure, at: number, value: number): PanelHoldRefusal | undefined {
  const [least, most] = RANGES[figure];
  if (value >= least && value <= most) return undefined;
  return { code: 'HOLD_FIGURE_OUT_OF_RANGE', figure, at, value, least, most };
}

function endsRefusal(figure: HoldFigure, at: number, ends: Ends<number>): PanelHoldRefusal | undefined {
  const bad = figureRefusal(figure, at, ends.low) ?? figureRefusal(figure, at, ends.high);
  if (bad) return bad;
  if (ends.low <= ends.high) return undefined;
  return { code: 'HOLD_ENDS_REVERSED', figure, at, low: ends.low, high: ends.high };
}

/** What is wrong with a gust pressure, or undefined. */
export const pressureRefusal = (pressure: number): PanelHoldRefusal | undefined =>
  figureRefusal('pressure', -1, pressure);

/** The first thing wrong with a panel's figures, or undefined. */
export function checkPanel(panel: HoldPanel): PanelHoldRefusal | undefined {
  const { points } = panel;
  if (points.length < LEAST_POINTS)
    return { code: 'TOO_FEW_HOLD_POINTS', count: points.length, least: LEAST_POINTS };
  for (const figure of ['area', 'weight', 'lean', 'pressure', 'airDensity', 'slack', 'arm'] as const) {
    const bad = figureRefusal(figure, -1, panel[figure]);
    if (bad) return bad;
  }
  const stiffness = endsRefusal('stiffness', -1, panel.stiffness);
  if (stiffness) return stiffness;
  for (const [at, point] of points.entries()) {
    for (const figure of ['x', 'y', 'face'] as const) {
      const bad = figureRefusal(figure, at, point[figure]);
      if (bad) return bad;
    }
    for (const figure of ['pull', 'breakAway', 'friction', 'load'] as const) {
      const bad = endsRefusal(figure, at, point[figure]);
      if (bad) return bad;
    }
    const next = (at + 1) % points.length;
    if (point.x === points[next]!.x && point.y === points[next]!.y)
      return { code: 'HOLD_POINTS_COINCIDE', at, next };
  }
  return undefined;
}

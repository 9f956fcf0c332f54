import type {
  MetrePerSecond,
  Millimetre,
  Newton,
  Pascal,
  Radian,
  SquareMillimetre,
} from '@panewright/quantity';
import type { NewtonPerMillimetreRun } from '../edge/sag.ts';
import type { KilogramPerCubicMetre } from '../wind/pressure.ts';

/** Two ends of what a figure may be. */
export interface Ends<T extends number> {
  readonly low: T;
  readonly high: T;
}

/** A point where the panel is held. Places in the plane of the glass, y up along it. */
export interface HoldPointStrength {
  readonly x: Millimetre;
  readonly y: Millimetre;
  /** Working pull. */
  readonly pull: Ends<Newton>;
  /** Side load at which the pair lets go with nothing lifting it: slipHold at the ends of pull and friction. */
  readonly breakAway: Ends<Newton>;
  /** Of the pocket on the glass, true ratios. */
  readonly friction: Ends<number>;
  /** Across the magnet's face, over the rim it would peel about. */
  readonly face: Millimetre;
  /** Lift on the panel over the dynamic pressure, true ratios; higher at corners. See screenLoad. */
  readonly load: Ends<number>;
}

export interface HoldPanel {
  /** In order round the panel. */
  readonly points: readonly HoldPointStrength[];
  readonly area: SquareMillimetre;
  readonly weight: Newton;
  /** Lean of the glass from upright; positive where its outside faces down and the panel hangs off it. */
  readonly lean: Radian;
  /** Dynamic pressure of the gust. */
  readonly pressure: Pascal;
  readonly airDensity: KilogramPerCubicMetre;
  /** Of the mesh along the edge, N per mm of width for unit strain. */
  readonly stiffness: Ends<NewtonPerMillimetreRun>;
  /** Length of an edge between two points over its chord, a true ratio. */
  readonly slack: number;
  /** Height over the glass at which the cloth draws on the pocket. */
  readonly arm: Millimetre;
}

export type HoldMode = 'pullOff' | 'slip' | 'peel';

/** Strength over demand: 1 lets go. `unloaded`: nothing is asked in that mode. */
export type Margin = 'unloaded' | { readonly low: number; readonly high: number | 'unloaded' };

export interface PointHold {
  /** Off the glass; negative presses on. */
  readonly normal: Ends<Newton>;
  /** Along the glass. */
  readonly side: Ends<Newton>;
  readonly margins: { readonly [mode in HoldMode]: Margin };
  /** The mode with the least low margin. */
  readonly governing: HoldMode;
  readonly margin: Margin;
}

export interface PanelHold {
  /** In the order of the points given. */
  readonly points: readonly PointHold[];
  /** Which of them has the least low margin. */
  readonly weakest: number;
  /** Gust speed at which the first point lets go; 0 if it cannot carry the weight, `beyondRange` past 100 m/s. */
  readonly letGo: {
    readonly low: MetrePerSecond | 'beyondRange';
    readonly high: MetrePerSecond | 'beyondRange';
  };
}

export type HoldFigure =
  | 'x'
  | 'y'
  | 'pull'
  | 'breakAway'
  | 'friction'
  | 'face'
  | 'load'
  | 'area'
  | 'weight'
  | 'lean'
  | 'pressure'
  | 'airDensity'
  | 'stiffness'
  | 'slack'
  | 'arm';

export type PanelHoldRefusal =
  | { readonly code: 'TOO_FEW_HOLD_POINTS'; readonly count: number; readonly least: number }
  | { readonly code: 'HOLD_POINTS_COINCIDE'; readonly at: number; readonly next: number }
  /** `at` is the place in the list of points, -1 for a figure of the panel. */
  | {
      readonly code: 'HOLD_FIGURE_OUT_OF_RANGE';
      readonly figure: HoldFigure;
      readonly at: number;
      readonly value: number;
      readonly least: number;
      readonly most: number;
    }
  | {
      readonly code: 'HOLD_ENDS_REVERSED';
      readonly figure: HoldFigure;
      readonly at: number;
      readonly low: number;
      readonly high: number;
    };

import type { Ground } from './paintFilm.ts';
import type { Xy } from './sceneOutline.ts';

export type Difficulty = 'easy' | 'medium' | 'hard';

export interface Level {
  /** Peak to valley of the film, mm. */
  readonly zone: Xy;
  readonly folds: Xy;
  readonly tilt: Xy;
  readonly blur: Xy;
  readonly noise: Xy;
  readonly wobble: Xy;
  readonly fall: number;
  readonly grounds: readonly Ground[];
}

/** Bounds as in the six given pictures' own truths (flatness, wobble, tilt) or as judged by eye from them (light). */
export const LEVELS: Readonly<Record<Difficulty, Level>> = {
  easy: {
    zone: [0, 0],
    folds: [0, 0],
    tilt: [1, 5],
    blur: [0.5, 0.7],
    noise: [0.8, 1.5],
    wobble: [0, 0.03],
    fall: 0.1,
    grounds: ['table', 'table', 'concrete'],
  },
  medium: {
    zone: [0.4, 1.2],
    folds: [0, 6],
    tilt: [4, 15],
    blur: [0.55, 0.9],
    noise: [1.5, 3],
    wobble: [0.04, 0.07],
    fall: 0.2,
    grounds: ['table', 'wood', 'mat', 'concrete'],
  },
  hard: {
    zone: [1.2, 3.5],
    folds: [6, 26],
    tilt: [10, 33],
    blur: [0.7, 1.2],
    noise: [2.5, 5],
    wobble: [0.06, 0.1],
    fall: 0.3,
    grounds: ['wood', 'mat', 'concrete', 'stripes'],
  },
};

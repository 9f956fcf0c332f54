import jpeg from 'jpeg-js';
import type { Camera } from '../camera.ts';
import { draw } from './draw.ts';
import type { Ground } from './paintFilm.ts';
import { type Exposure, photograph } from './photograph.ts';
import { makeLens, makeLight, standCamera } from './sceneCamera.ts';
import { paintScene } from './sceneInk.ts';
import { makeSurface, placeSheets, sheetCorners } from './sceneLayout.ts';
import { type Difficulty, LEVELS } from './sceneLevel.ts';
import { along, outlineOf, randomCorners, type SceneShape, type Xy } from './sceneOutline.ts';
import { truthOf } from './sceneTruth.ts';
import type { Truth } from './score.ts';

export interface SceneRecipe {
  readonly seed: number;
  readonly difficulty: Difficulty;
  readonly shape?: SceneShape;
  /** Looks at the same film; 1 if left out. */
  readonly views?: number;
  /** px; 3000 x 2250 if left out. */
  readonly width?: number;
}

export interface SceneView {
  readonly jpeg: Uint8Array;
  readonly camera: Camera;
}

export interface Scene {
  readonly shape: SceneShape;
  readonly ground: Ground;
  readonly outside: boolean;
  readonly rim: boolean;
  readonly truth: Truth;
  readonly views: readonly SceneView[];
}

/** A made-up film with its truth and photos of it; the same recipe gives the same bytes. */
export function makeScene(recipe: SceneRecipe): Scene {
  const random = draw(recipe.seed * 7919 + recipe.difficulty.length);
  const level = LEVELS[recipe.difficulty];
  const shape =
    recipe.shape ?? random.pick(['plain', 'plain', 'bowed', 're-entrant', 's-curve', 'sharp'] as const);
  const half: Xy = [random.between(430, 700), random.between(280, 370)];
  const segments = outlineOf(randomCorners(random, shape, half));
  const line = segments.flatMap((s) => along(s, 1));
  const outside = random.chance(0.25);
  const scale: Xy = [1 + random.normal(0.0025), 1 + random.normal(0.0025)];
  const sheets = placeSheets(
    random,
    line,
    outside,
    recipe.difficulty === 'hard' ? random.pick([3, 4, 4]) : 4,
  );
  const surface = makeSurface(random, level, recipe.difficulty === 'easy');
  const kind = random.pick(level.grounds);
  const rim = recipe.difficulty === 'hard' && random.chance(0.1);
  const film = paintScene(random, level, recipe.difficulty, { line, sheets, scale, kind, outside, rim });
  const lens = makeLens(random, recipe.difficulty, recipe.width ?? 3000);
  const must = [
    ...line.filter((_, i) => i % 20 === 0).map(([x, y]) => ({ x, y })),
    ...sheetCorners(sheets, scale),
  ];
  const views = Array.from({ length: recipe.views ?? 1 }, (_, view) => {
    const exposure = {
      width: recipe.width ?? 3000,
      height: ((recipe.width ?? 3000) * 3) / 4,
      blur: random.between(...level.blur),
      noise: random.between(...level.noise),
    };
    const camera = standCamera(random, level, lens, exposure, must, view);
    const light = makeLight(random, level, recipe.difficulty, half);
    const grey = photograph(film, surface, camera, light, exposure, random);
    return { camera, jpeg: encode(grey, exposure) };
  });
  const truth = truthOf(random, segments, sheets, scale, surface);
  return { shape, ground: kind, outside, rim, truth, views };
}

function encode(grey: Uint8Array, { width, height }: Exposure): Uint8Array {
  const data = new Uint8Array(4 * grey.length).fill(255);
  for (let k = 0; k < grey.length; k++) data.fill(grey[k]!, 4 * k, 4 * k + 3);
  return jpeg.encode({ width, height, data }, 86).data;
}

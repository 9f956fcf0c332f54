import type { Camera } from '../camera.ts';
import type { Draw } from './draw.ts';
import type { Point } from './film.ts';
import { type Exposure, inFrame, type Light } from './photograph.ts';
import type { Difficulty, Level } from './sceneLevel.ts';
import type { Xy } from './sceneOutline.ts';

/** What the photo's file says, mm; the lens itself differs by a percent or so. */
export const SCENE_FOCAL_35 = 26;

export function makeLens(random: Draw, difficulty: Difficulty, width: number) {
  const nominal = (SCENE_FOCAL_35 / 43.2666) * Math.hypot(width, (width * 3) / 4);
  const easy = difficulty === 'easy';
  const hard = difficulty === 'hard';
  return {
    focal: nominal * (1 + random.normal(0.012)),
    k1: easy ? random.normal(0.008) : random.between(-0.05, 0.04),
    k2: easy ? 0 : random.between(-0.006, 0.008),
    p1: hard ? random.normal(2e-4) : 0,
    p2: hard ? random.normal(2e-4) : 0,
  };
}

/** Steps back until all is in the frame, looking roughly at the middle from the side. */
export function standCamera(
  random: Draw,
  level: Level,
  lens: ReturnType<typeof makeLens>,
  exposure: Exposure,
  must: readonly Point[],
  view: number,
): Camera {
  const tilt = (random.between(...level.tilt) * Math.PI) / 180;
  const side = random.between(0, 2 * Math.PI) + view * 2.1;
  const roll = random.normal(0.06);
  const [cx, cy] = [
    (exposure.width - 1) / 2 + random.normal(exposure.width / 170),
    (exposure.height - 1) / 2 + random.normal(exposure.width / 200),
  ];
  const aim = { x: random.normal(20), y: random.normal(20) };
  for (let distance = 700; distance < 5000; distance += 20) {
    const camera = lookAt(lens, cx, cy, aim, distance, tilt, side, roll);
    if (inFrame(camera, must, exposure, exposure.width / 75)) return camera;
  }
  throw new RangeError('no stand shows the whole film');
}

function lookAt(
  lens: ReturnType<typeof makeLens>,
  cx: number,
  cy: number,
  aim: Point,
  distance: number,
  tilt: number,
  side: number,
  roll: number,
): Camera {
  // Eye over the aim, `tilt` off the vertical towards `side`; the picture's up is the film's y, turned by roll.
  const eye = [
    aim.x + distance * Math.sin(tilt) * Math.cos(side),
    aim.y + distance * Math.sin(tilt) * Math.sin(side),
    distance * Math.cos(tilt),
  ] as const;
  const forward = unit([aim.x - eye[0], aim.y - eye[1], -eye[2]]);
  const right = unit(cross(forward, [Math.sin(roll), Math.cos(roll), 0]));
  const down = cross(forward, right);
  const rotation = Float64Array.of(...right, ...down, ...forward);
  const translation = [right, down, forward].map(
    (row) => -(row[0] * eye[0] + row[1] * eye[1] + row[2] * eye[2]),
  ) as unknown as readonly [number, number, number];
  return { ...lens, cx, cy, rotation, translation };
}

type Vector = readonly [number, number, number];
const cross = (a: Vector, b: Vector): Vector => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
const unit = (a: Vector): Vector => {
  const size = Math.hypot(...a);
  return [a[0] / size, a[1] / size, a[2] / size];
};

/** Uneven light, soft shadows, reflections. */
export function makeLight(random: Draw, level: Level, difficulty: Difficulty, half: Xy): Light {
  const hard = difficulty === 'hard';
  const place = () => ({ x: random.between(-half[0], half[0]), y: random.between(-half[1], half[1]) });
  const shadows = Array.from({ length: difficulty === 'easy' ? 0 : random.whole(0, hard ? 2 : 1) }, () => ({
    at: place(),
    normal: random.between(0, 6.28),
    soft: random.between(3, 40),
    dark: random.between(0.25, hard ? 0.6 : 0.45),
  }));
  const spots = Array.from({ length: hard ? random.whole(0, 2) : 0 }, () => ({
    at: place(),
    angle: random.between(0, 3.14),
    long: random.between(80, 190),
    wide: random.between(40, 90),
    strength: random.between(60, 150),
  }));
  const streaks = Array.from({ length: difficulty === 'easy' ? 0 : random.whole(2, hard ? 18 : 6) }, () => ({
    at: place(),
    angle: random.between(0, 3.14),
    long: random.between(30, 120),
    wide: random.between(3, 8),
    strength: random.between(15, hard ? 110 : 45),
  }));
  return {
    fall: random.between(0, level.fall),
    direction: random.between(0, 6.28),
    shadows,
    glare: [...spots, ...streaks],
  };
}

import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { decodeJpeg, loadOpenCv, type OpenCv, type OpenCvModule, tracePhotos } from '@panewright/photo';
import { makeScene } from '../packages/photo/src/testing/scene.ts';
import { SCENE_FOCAL_35 } from '../packages/photo/src/testing/sceneCamera.ts';
import type { Difficulty } from '../packages/photo/src/testing/sceneLevel.ts';
import {
  edgeErrors,
  outlinePoints,
  type Truth,
  tapesOf,
  trueExtent,
  truePoints,
} from '../packages/photo/src/testing/score.ts';

const FIRST_SEED = 101;

function* pictures(name: string, count: number): Generator<{ id: string; jpeg: Uint8Array; truth: Truth }> {
  if (name === 'given') {
    for (const id of ['01_easy', '07_hard']) {
      const file = (ending: string) => readFileSync(`packages/photo/src/reference/${id}.${ending}`);
      yield { id, jpeg: file('jpg'), truth: JSON.parse(file('json').toString()) as Truth };
    }
    return;
  }
  for (let seed = FIRST_SEED; seed < FIRST_SEED + count; seed++) {
    const { shape, truth, views } = makeScene({ seed, difficulty: name as Difficulty });
    yield { id: `${name} ${seed} (${shape})`, jpeg: views[0]!.jpeg, truth };
  }
}

/** Width and height of the truth along and across its longest straight side, the longer first. */
function trueSizes(truth: Truth): [number, number] {
  const length = ({ start, end }: Truth['outline']['segments'][number]) =>
    Math.hypot(end[0] - start[0], end[1] - start[1]);
  const sides = truth.outline.segments.filter(({ type }) => type === 'line');
  const { start, end } = sides.reduce((a, b) => (length(b) > length(a) ? b : a));
  const turn = Math.atan2(end[1] - start[1], end[0] - start[0]);
  const [c, s] = [Math.cos(turn), Math.sin(turn)];
  const box = trueExtent(truePoints(truth).map(([x, y]) => [c * x + s * y, -s * x + c * y] as const));
  const [u, v] = [box[2] - box[0], box[3] - box[1]];
  return [Math.max(u, v), Math.min(u, v)];
}

function traced(cv: OpenCv, id: string, jpeg: Uint8Array, truth: Truth) {
  const before = process.cpuUsage();
  const { focalLength35 = SCENE_FOCAL_35, ...image } = decodeJpeg(jpeg);
  const { measured_x_mm: x, measured_y_mm: y } = truth.reference.ruler_check;
  const result = tracePhotos({
    cv,
    photos: [{ image, focalLength35 }],
    tapes: tapesOf(truth),
    ruler: { x, y },
  });
  const { user, system } = process.cpuUsage(before);
  if (!result.ok) return { id, refusal: result.refusal.code };
  const { outline, edges, width, height } = result.value;
  const errors = edgeErrors(outlinePoints(outline), truePoints(truth));
  const [long, short] = trueSizes(truth);
  const kinds = (list: readonly string[]) => [...list].sort().join();
  return {
    id,
    ms: (user + system) / 1000,
    p95: errors[Math.floor(0.95 * errors.length)]!,
    sizes: [
      { error: width.value - long, sigma: width.sigma },
      { error: height.value - short, sigma: height.sigma },
    ],
    segments: kinds(edges.map(({ kind }) => kind)) === kinds(truth.outline.segments.map(({ type }) => type)),
  };
}

const [name = 'given', count = '10'] = process.argv.slice(2);
const { cv } = await loadOpenCv(async () => ({
  default: createRequire(import.meta.url)('@techstark/opencv-js') as OpenCvModule['default'],
}));
const photos = [];
for (const { id, jpeg, truth } of pictures(name, Number(count))) photos.push(traced(cv, id, jpeg, truth));
console.log(JSON.stringify({ photos, memory: process.resourceUsage().maxRSS / 1024 }));

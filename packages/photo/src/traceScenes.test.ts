import { decodeJpeg, type Trace, tracePhotos } from '@panewright/photo';
import { beforeAll, describe, expect, test } from 'vitest';
import { makeScene } from './testing/scene.ts';
import { SCENE_FOCAL_35 } from './testing/sceneCamera.ts';
import type { SceneShape } from './testing/sceneOutline.ts';
import { edgeErrors, openCv, outlinePoints, type Truth, tapesOf, truePoints } from './testing/score.ts';

let cv: Awaited<ReturnType<typeof openCv>>;
beforeAll(async () => {
  cv = await openCv();
});

function traced(shape: SceneShape, seed: number): { trace: Trace; truth: Truth } {
  const { truth, views } = makeScene({ seed, shape, difficulty: 'medium', width: 2000 });
  const { measured_x_mm: x, measured_y_mm: y } = truth.reference.ruler_check;
  const photos = views.map(({ jpeg }) => ({ image: decodeJpeg(jpeg), focalLength35: SCENE_FOCAL_35 }));
  const result = tracePhotos({ cv: cv.cv, photos, tapes: tapesOf(truth), ruler: { x, y } });
  if (!result.ok) throw new Error(JSON.stringify(result.refusal));
  return { trace: result.value, truth };
}

// Oracle: the exact outline a made-up scene was painted from (testing/scene.ts); the camera model is the tracer's own,
// so what is tested here is the finding and the fitting. The pictures in reference/ were made by other hands.
describe.each<[SceneShape, number]>([
  ['re-entrant', 3],
  ['s-curve', 5],
])('a made-up film with a %s outline', (shape, seed) => {
  let found: ReturnType<typeof traced>;
  beforeAll(() => {
    found = traced(shape, seed);
  });

  test('95 % of the edge lies within 0.8 mm of the truth', () => {
    const errors = edgeErrors(outlinePoints(found.trace.outline), truePoints(found.truth));
    expect(errors[Math.floor(0.95 * errors.length)]).toBeLessThan(0.8);
    expect(errors.at(-1)).toBeLessThan(1.5);
  });

  test('lines, arcs and sharp corners are as many as were drawn', () => {
    const count = (kind: string, list: readonly { kind?: string; type?: string }[]) =>
      list.filter((s) => (s.kind ?? s.type) === kind).length;
    const { edges } = found.trace;
    const { segments } = found.truth.outline;
    expect(count('line', edges)).toBe(count('line', segments));
    expect(count('arc', edges)).toBe(count('arc', segments));
  });
});

import {
  filmPointAt,
  type OpenCv,
  pixelOf,
  type Trace,
  type TraceInput,
  type TracePhoto,
  tracePhotos,
} from '@panewright/photo';
import { beforeAll, describe, expect, test } from 'vitest';
import {
  edgeErrors,
  openCv,
  outlinePoints,
  readPhoto,
  readTruth,
  tapesOf,
  truePoints,
} from './testing/score.ts';

let cv: { readonly cv: OpenCv };
beforeAll(async () => {
  cv = await openCv();
});

function input(name: string, photo: TracePhoto): TraceInput {
  const truth = readTruth(name);
  const { measured_x_mm: x, measured_y_mm: y } = truth.reference.ruler_check;
  return { cv: cv.cv, photos: [photo], tapes: tapesOf(truth), ruler: { x, y } };
}

// Oracle: the outlines the pictures were rendered from (reference/README.md); they were made by a renderer that
// shares no code with the tracer.
describe.each([
  ['01_easy', 'flat on a table, sheets inside'],
  ['07_hard', 'folds, glare, a gap in the ink, sheets outside and turned'],
])('photo %s (%s)', (name) => {
  const truth = readTruth(name);
  let trace: Trace;
  beforeAll(() => {
    const result = tracePhotos(input(name, readPhoto(name)));
    if (!result.ok) throw new Error(JSON.stringify(result.refusal));
    trace = result.value;
  });

  test('95 % of the edge lies within 0.8 mm of the truth after the best rigid fit', () => {
    const errors = edgeErrors(outlinePoints(trace.outline), truePoints(truth));
    expect(errors[Math.floor(0.95 * errors.length)]).toBeLessThan(0.8);
    expect(errors.at(-1)).toBeLessThan(1.3);
  });

  test('width and height lie within their stated 95 % intervals, which are no wider than 6 mm', () => {
    const [[left, low], [right, high]] = truth.outline.bbox;
    for (const [measure, value] of [
      [trace.width, right - left],
      [trace.height, high - low],
    ] as const) {
      expect(measure.interval[0]).toBeLessThan(value);
      expect(measure.interval[1]).toBeGreaterThan(value);
      expect(measure.interval[1] - measure.interval[0]).toBeLessThan(6);
    }
  });

  test('it has the true number of lines and tangent arcs, and each radius within three sigma', () => {
    const count = (kind: string, list: readonly { kind?: string; type?: string }[]) =>
      list.filter((s) => (s.kind ?? s.type) === kind).length;
    expect(count('line', trace.edges)).toBe(count('line', truth.outline.segments));
    expect(count('arc', trace.edges)).toBe(count('arc', truth.outline.segments));
    expect(trace.edges.every((edge) => edge.joint === 'tangent')).toBe(true);
    const radii = (list: readonly number[]) => [...list].sort((a, b) => a - b);
    const wanted = radii(truth.outline.segments.flatMap((s) => s.radius ?? []));
    const found = radii(trace.edges.flatMap((e) => e.radius?.value ?? []));
    const sigma = Math.max(...trace.edges.map((e) => e.radius?.sigma ?? 0));
    found.forEach((radius, i) => {
      expect(Math.abs(radius - wanted[i]!)).toBeLessThan(3 * sigma);
    });
  });

  // Oracle: the truth's own pairs of mm and pixel, which were rendered through its camera and lens.
  test('its view takes the true pixels of the line onto the line, and back', () => {
    const [view] = trace.views;
    const places = truth.outline_px.map(({ px: [x, y] }) => filmPointAt(view!, { x, y })!);
    const errors = edgeErrors(
      places.map(({ x, y }) => [x, y]),
      truePoints(truth),
    );
    expect(errors[Math.floor(0.95 * errors.length)]).toBeLessThan(0.8);
    truth.outline_px.forEach(({ px: [x, y] }, i) => {
      const back = pixelOf(view!, places[i]!)!;
      expect(Math.hypot(back.x - x, back.y - y)).toBeLessThan(1e-6);
    });
  });

  test('nothing needs to be asked', () => {
    expect(trace.questions).toEqual([]);
    expect(trace.verdict).toBe('ok');
  });
});

// Oracle: the truth of 07_hard. Taps are pixels read off the picture by eye, on or within a few pixels of the line.
test('six points tapped on the line, in either sense, give the same outline as looking for it', () => {
  const truth = readTruth('07_hard');
  const points = [
    [620, 720],
    [1300, 650],
    [2330, 600],
    [2410, 1200],
    [1700, 1525],
    [700, 1552],
  ].map(([x, y]) => ({ x: x!, y: y! }));
  for (const order of [points, [...points].reverse()]) {
    const result = tracePhotos({
      ...input('07_hard', readPhoto('07_hard')),
      taps: { photo: 0, points: order },
    });
    if (!result.ok) throw new Error(JSON.stringify(result.refusal));
    expect(result.value.edges.length).toBe(truth.outline.segments.length);
    const errors = edgeErrors(outlinePoints(result.value.outline), truePoints(truth));
    expect(errors[Math.floor(0.95 * errors.length)]).toBeLessThan(0.8);
  }
});

describe('what is refused', () => {
  const photo = readPhoto('01_easy');

  test('a scale nobody measured', () => {
    const { cv: module, photos } = input('01_easy', photo);
    expect(tracePhotos({ cv: module, photos, tapes: [] })).toEqual({
      ok: false,
      refusal: { code: 'SCALE_NOT_MEASURED' },
    });
  });

  test('a tape reading 20 mm off what photo and ruler say', () => {
    const given = input('01_easy', photo);
    const tapes = given.tapes.map((tape, i) => (i === 0 ? { ...tape, length: tape.length + 20 } : tape));
    const result = tracePhotos({ ...given, tapes });
    expect(result).toMatchObject({ ok: false, refusal: { code: 'TAPE_DISAGREES' } });
  });

  test('a photo that shows one sheet only', () => {
    const image = photo.image as { width: number; height: number; data: Uint8Array };
    const data = Uint8Array.from(image.data, (grey, k) =>
      k % image.width > 1000 || k > image.width * 1100 ? 128 : grey,
    );
    const result = tracePhotos({ ...input('01_easy', { ...photo, image: { ...image, data } }), tapes: [] });
    expect(result).toMatchObject({ ok: false, refusal: { code: 'ONE_SHEET_ONLY', photo: 0, sheet: 0 } });
  });

  test('a picture without markers', () => {
    const image = { width: 640, height: 480, data: new Uint8Array(640 * 480).fill(200) };
    const result = tracePhotos(input('01_easy', { image }));
    expect(result).toEqual({ ok: false, refusal: { code: 'TOO_FEW_MARKERS', photo: 0, found: 0, least: 4 } });
  });

  test('a photo sent too small for the ink to be seen', () => {
    const { width, height, data } = photo.image as { width: number; height: number; data: Uint8Array };
    const [w, h] = [Math.floor(width / 6), Math.floor(height / 6)];
    const mean = (x: number, y: number) => {
      let sum = 0;
      for (let k = 0; k < 36; k++) sum += data[(6 * y + Math.floor(k / 6)) * width + 6 * x + (k % 6)]!;
      return Math.round(sum / 36);
    };
    const small = Uint8Array.from({ length: w * h }, (_, k) => mean(k % w, Math.floor(k / w)));
    const result = tracePhotos(input('01_easy', { ...photo, image: { width: w, height: h, data: small } }));
    expect(result).toMatchObject({ ok: false, refusal: { code: 'PHOTO_TOO_SMALL', photo: 0, least: 36 } });
  });

  test('an ultra-wide lens, by its own file', () => {
    const result = tracePhotos(input('01_easy', { image: photo.image, focalLength35: 13 }));
    expect(result).toMatchObject({ ok: false, refusal: { code: 'ULTRA_WIDE_LENS', focalLength35: 13 } });
  });

  test('going on when told to stop', () => {
    const result = tracePhotos({ ...input('01_easy', photo), shouldStop: () => true });
    expect(result).toEqual({ ok: false, refusal: { code: 'STOPPED' } });
  });
});

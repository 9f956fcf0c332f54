import { join } from 'node:path';
import {
  callOperation,
  edges,
  examplePattern,
  type KeptPattern,
  memoryStore,
  mm,
  moveOutline,
  type Outline,
  type Ports,
  point,
  type Refusal,
  type Result,
  radian,
} from '@panewright/contract';
import { roundedPolygon } from '@panewright/geometry';
import { type SqliteStore, sqliteStore } from '@panewright/server';
import { afterAll, describe, expect, test } from 'vitest';
import { temporaryFolder, ticking } from './temporary.ts';
import { seeded } from './trials/seeded.ts';

const folder = temporaryFolder();
const open: SqliteStore[] = [];
let count = 0;
const sqlite = (name = `patterns-${count++}`) => {
  const store = sqliteStore(join(folder, name), ticking());
  open.push(store);
  return store;
};
afterAll(async () => {
  await Promise.all(open.map((store) => store.close()));
});

interface Answer {
  readonly patterns: readonly {
    readonly pattern: KeptPattern;
    readonly fit: { readonly deviation: number; readonly turnedOver: boolean; readonly sigma: number } | null;
  }[];
  readonly more: number;
}

const ask = (ports: Ports, name: string, input: unknown): Promise<Result<unknown, Refusal>> =>
  callOperation(name, input, ports);
const answered = async <T>(ports: Ports, name: string, input: unknown): Promise<T> => {
  const result = await ask(ports, name, input);
  if (!result.ok) throw new Error(JSON.stringify(result.refusal));
  return result.value as T;
};
const ids = ({ patterns }: Answer) => patterns.map(({ pattern }) => pattern.id);

const segmentsOf = (outline: Outline): KeptPattern['segments'] =>
  edges(outline).map(({ to: { x, y }, bulge }) =>
    bulge === 0
      ? { kind: 'line', to: { x, y }, sigma: 0.5 }
      : { kind: 'arc', to: { x, y }, bulge, sigma: 0.5 },
  );

const named = (id: string, more: Partial<KeptPattern> = {}): KeptPattern => ({
  ...examplePattern,
  id,
  ...more,
});
const drawn = (id: string, outline: Outline, more: Partial<KeptPattern> = {}): KeptPattern => {
  const segments = segmentsOf(outline);
  return named(id, { segments, edgeNames: segments.map((_, k) => `side${k}`), ...more });
};

/** A window of four rounded corners, none square. Invented. */
function windowOf(random: () => number, off = 0): Outline {
  const [w, h, lean, drop] = [300 + 900 * random(), 200 + 500 * random(), 60 * random(), 30 * random()];
  const corners = [point(0, 0), point(w + off, 0), point(w - lean, h), point(0, h - drop)];
  const made = roundedPolygon(corners, mm(10 + 50 * random()));
  if (!made.ok) throw new Error(made.refusal.code);
  return made.value;
}

describe.each([
  ['in memory', () => memoryStore(ticking())],
  ['SQLite', () => sqlite()],
] as const)('%s', (_, make: () => Ports) => {
  test('a kept pattern comes back as it was kept, with where it came from', async () => {
    const ports = make();
    await answered(ports, 'keepPattern', { pattern: examplePattern });
    expect(await answered(ports, 'openPattern', { id: 'side-window' })).toMatchObject({
      pattern: examplePattern,
      removed: false,
    });
    expect(await ask(ports, 'openPattern', { id: 'none' })).toMatchObject({
      refusal: { code: 'PATTERN_NOT_FOUND', id: 'none' },
    });
  });

  test('the very same kept twice is kept once; another under its id is refused', async () => {
    const ports = make();
    await answered(ports, 'keepPattern', { pattern: examplePattern });
    await answered(ports, 'keepPattern', { pattern: examplePattern });
    expect(ids(await answered(ports, 'findPatterns', {}))).toEqual(['side-window']);
    expect(
      await ask(ports, 'keepPattern', { pattern: { ...examplePattern, name: 'Another' } }),
    ).toMatchObject({
      refusal: { code: 'PATTERN_EXISTS', id: 'side-window', name: 'Side window' },
    });
  });

  test('patterns are found by name, site, customer and opening, whatever the case, accent or order', async () => {
    const ports = make();
    const { from } = examplePattern;
    for (const pattern of [
      named('a', { name: 'Rear hatch', from: { ...from, site: { kind: 'boat', name: 'Möwe' } } }),
      named('b', { from: { ...from, customer: 'R. Sample', site: { kind: 'camper', name: 'Long van' } } }),
      named('c', {
        from: { ...from, openings: [{ id: 'W9', name: 'Galley', place: 'port', turnedOver: true }] },
      }),
    ])
      await answered(ports, 'keepPattern', { pattern });
    const found = async (text: string) => ids(await answered(ports, 'findPatterns', { text }));
    expect(await found('')).toEqual(['c', 'b', 'a']);
    expect(await found('mowe HATCH')).toEqual(['a']);
    expect(await found('sample')).toEqual(['b']);
    expect(await found('van long')).toEqual(['b']);
    expect(await found('galley w9')).toEqual(['c']);
    expect(await found('%')).toEqual([]);
    expect(await answered<Answer>(ports, 'findPatterns', { most: 2 })).toMatchObject({ more: 1 });
  });

  test('a removed pattern is off the list until it is brought back; a new name is found', async () => {
    const ports = make();
    await answered(ports, 'keepPattern', { pattern: examplePattern });
    await answered(ports, 'removePattern', { id: 'side-window' });
    expect(ids(await answered(ports, 'findPatterns', {}))).toEqual([]);
    expect(ids(await answered(ports, 'findPatterns', { removed: true }))).toEqual(['side-window']);
    await answered(ports, 'restorePattern', { id: 'side-window' });
    await answered(ports, 'describePattern', { id: 'side-window', name: 'Porthole' });
    expect(ids(await answered(ports, 'findPatterns', { text: 'porthole' }))).toEqual(['side-window']);
    expect(await ask(ports, 'removePattern', { id: 'none' })).toMatchObject({
      refusal: { code: 'PATTERN_NOT_FOUND' },
    });
  });

  test('what is no outline is neither kept nor looked for', async () => {
    const ports = make();
    const flat = [
      { kind: 'line', to: { x: 0, y: 0 }, sigma: 0.5 },
      { kind: 'line', to: { x: 400, y: 0 }, sigma: 0.5 },
    ];
    const refused = { refusal: { code: 'SHAPE_IMPOSSIBLE' } };
    const pattern = { ...examplePattern, segments: flat, edgeNames: ['a', 'b'] };
    expect(await ask(ports, 'keepPattern', { pattern })).toMatchObject(refused);
    expect(await ask(ports, 'findPatterns', { like: { segments: flat, within: 3 } })).toMatchObject(refused);
    expect(
      await ask(ports, 'keepPattern', { pattern: { ...examplePattern, edgeNames: ['a'] } }),
    ).toMatchObject({
      refusal: { code: 'INPUT_INVALID', issues: [{ path: ['pattern', 'edgeNames'] }] },
    });
  });

  // Oracle: the shapes looked for are made from kept ones: moved, turned, half of them turned over, one side `off` longer,
  // so the worst deviation is at most that. Nothing like it may be lost among the others.
  test('a shape made before is found among 120 others, turned about and turned over', async () => {
    const ports = make();
    const random = seeded(7);
    const shapes = Array.from({ length: 120 }, () => windowOf(random));
    for (const [k, outline] of shapes.entries()) await ports.patterns.keep(drawn(`k${k}`, outline));
    for (let k = 0; k < 12; k++) {
      const mirrored = k % 2 === 1;
      const motion = { angle: radian(6.28 * random()), shift: point(900 * random(), 40), mirrored };
      const like = { segments: segmentsOf(moveOutline(motion, shapes[9 * k]!)), within: 3.175 };
      const answer = await answered<Answer>(ports, 'findPatterns', { like });
      expect(answer.patterns[0]).toMatchObject({
        pattern: { id: `k${9 * k}` },
        fit: { turnedOver: mirrored, sigma: expect.closeTo(Math.hypot(0.5, 0.5), 9) },
      });
      expect(answer.patterns[0]!.fit!.deviation).toBeLessThan(0.01);
    }
  });

  test('a shape a little off is found with how far, and not beyond what still counts', async () => {
    const ports = make();
    await ports.patterns.keep(drawn('kept', windowOf(seeded(3))));
    const like = (off: number, within: number) => ({
      segments: segmentsOf(windowOf(seeded(3), off)),
      within,
    });
    const near = await answered<Answer>(ports, 'findPatterns', { like: like(3, 3) });
    expect(ids(near)).toEqual(['kept']);
    expect(near.patterns[0]!.fit!.deviation).toBeGreaterThan(0.5);
    expect(near.patterns[0]!.fit!.deviation).toBeLessThanOrEqual(3);
    expect(ids(await answered(ports, 'findPatterns', { like: like(20, 3) }))).toEqual([]);
  });
});

test('SQLite: a kept pattern is there when the store is opened again', async () => {
  const first = sqlite('again');
  await first.patterns.keep(examplePattern);
  await first.close();
  expect(await sqlite('again').patterns.open('side-window')).toMatchObject({
    value: { pattern: examplePattern },
  });
});

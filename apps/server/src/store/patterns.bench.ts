import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { callOperation, examplePattern, type KeptPattern } from '@panewright/contract';
import { sqliteStore } from './sqliteStore.ts';

const COUNT = 5000;

const folder = mkdtempSync(join(tmpdir(), 'panewright-bench-'));
process.on('exit', () => rmSync(folder, { recursive: true, force: true }));
const store = sqliteStore(folder, () => '2026-11-25T09:00:00.000Z');

let state = 1;
const next = () => {
  state = (state * 48271) % 2147483647;
  return state / 2147483647;
};

/** Windows of four corners, the sides rounded to the millimetre as a maker's are; one in five made before. Invented. */
const shapes: (readonly [number, number, number])[] = [];
const shape = () => {
  const again = next() < 0.2 ? shapes[Math.floor(next() * shapes.length)] : undefined;
  const made = again ?? [
    300 + Math.round(900 * next()),
    200 + Math.round(500 * next()),
    Math.round(60 * next()),
  ];
  shapes.push(made as readonly [number, number, number]);
  return made;
};

function pattern(id: string): KeptPattern {
  const [w, h, lean] = shape() as [number, number, number];
  const to = [
    [w, 0],
    [w - lean, h],
    [0, h - lean / 4],
    [0, 0],
  ] as const;
  return {
    ...examplePattern,
    id,
    segments: to.map(([x, y]) => ({ kind: 'line', to: { x, y }, sigma: 0.5 })),
  };
}

const all: KeptPattern[] = [];
for (let k = 0; k < COUNT; k++) {
  const one = pattern(`k${k}`);
  all.push(one);
  await store.patterns.keep(one);
}
let turn = 0;
const like = () => ({ segments: all[(turn += 577) % COUNT]!.segments, within: 6.35 });

export const benches: { name: string; run: () => unknown }[] = [
  {
    name: `find a shape among ${COUNT.toLocaleString('en')} kept patterns`,
    run: () => callOperation('findPatterns', { like: like() }, store),
  },
  {
    name: `find words among ${COUNT.toLocaleString('en')} kept patterns`,
    run: () => callOperation('findPatterns', { text: 'side camper' }, store),
  },
];

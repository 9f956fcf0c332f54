import { type SearchThreads, searchThreads } from './searchThreads.ts';

/** What a command uses of the world, so that a test can stand in for it. */
export interface Io {
  readonly out: (text: string) => void;
  readonly err: (text: string) => void;
  readonly fetch: typeof fetch;
  /** Seconds, from any start. */
  readonly clock: () => number;
  /** `2026-11-25` */
  readonly today: () => string;
  /** Shows how far a long work is, on one line that is written over; missing where nobody watches. */
  readonly progress?: (text: string) => void;
  readonly searchThreads: (count: number) => SearchThreads;
}

const progress = (text: string) => void process.stderr.write(`\r\u001b[K${text}`);

export const processIo: Io = {
  out: (text) => void process.stdout.write(text),
  err: (text) => void process.stderr.write(text),
  fetch,
  clock: () => performance.now() / 1000,
  today: () => new Date().toISOString().slice(0, 10),
  ...(process.stderr.isTTY ? { progress } : {}),
  searchThreads: (count) => searchThreads(count, new URL('./packWorker.mjs', import.meta.url)),
};

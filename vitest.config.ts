import { configDefaults, defineConfig } from 'vitest/config';

// Long ones whose ground the benchmarks and other tests cover: PANEWRIGHT_ALL=1 runs them too.
const LONG = ['kept', 'offcuts', 'survey', 'kill']
  .map((name) => `tests/browser/${name}.test.ts`)
  .concat('tests/trials/trials.test.ts', 'packages/photo/src/traceScenes.test.ts');

export default defineConfig({
  test: {
    include: ['packages/*/src/**/*.test.ts', 'apps/*/src/**/*.test.{ts,tsx}', 'tests/**/*.test.ts'],
    exclude: [...configDefaults.exclude, ...(process.env.PANEWRIGHT_ALL ? [] : LONG)],
    testTimeout: 120_000,
    hookTimeout: 120_000,
    maxWorkers: 2,
    // Test files of one worker share the modules they load: loading them anew for each took a quarter of the run.
    isolate: false,
  },
});

import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll } from 'vitest';

/** A folder that is gone when the test file is done. */
export function temporaryFolder(): string {
  const folder = mkdtempSync(join(tmpdir(), 'panewright-'));
  afterAll(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}

/** A clock that ticks a second each time it is asked: saved times are all different and always the same. */
export function ticking(): () => string {
  let seconds = Date.UTC(2026, 0, 1) / 1000;
  return () => new Date(1000 * seconds++).toISOString();
}

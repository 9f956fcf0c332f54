import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { at } from './root.mjs';

/** Ends a lock whose holder is no longer running. */
function freeIfLeft(folder) {
  try {
    process.kill(Number(readFileSync(join(folder, 'pid'), 'utf8')), 0);
  } catch (error) {
    if (error.code === 'ESRCH') rmSync(folder, { recursive: true, force: true });
  }
}

/** Waits until no other process has the lock of that name, and takes it; gives what frees it. */
export async function takeLock(name) {
  const folder = at('.cache', `${name}.lock`);
  mkdirSync(at('.cache'), { recursive: true });
  for (let told = false; ; told = true) {
    try {
      mkdirSync(folder);
      writeFileSync(join(folder, 'pid'), String(process.pid));
      return () => rmSync(folder, { recursive: true, force: true });
    } catch (error) {
      if (error.code !== 'EEXIST') throw error;
    }
    if (!told) console.log(`Waiting for another ${name} of this clone …`);
    await new Promise((resolve) => setTimeout(resolve, 300));
    freeIfLeft(folder);
  }
}

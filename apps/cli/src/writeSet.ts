import { mkdir, mkdtemp, readdir, readFile, rename, rm, writeFile } from 'node:fs/promises';
import { basename, dirname, join, resolve } from 'node:path';
import { Usage } from './exits.ts';
import { reason } from './readFile.ts';

export interface MadeFile {
  /** Below the folder, with / between its parts. */
  readonly path: string;
  readonly bytes: Uint8Array;
}

/** Lists what was written, so that the next time what is no longer made is taken away. */
const LIST = 'files.json';

/**
 * Writes a set of files into a folder. All of it is written beside the folder first and then moved in, so that no file is
 * ever there by half; a folder that was not there appears whole. Files that are not of a set before are left alone.
 */
export async function writeSet(folder: string, files: readonly MadeFile[]): Promise<void> {
  const target = resolve(folder);
  try {
    await mkdir(dirname(target), { recursive: true });
    const beside = await mkdtemp(join(dirname(target), `.${basename(target)}-`));
    try {
      for (const file of files) await put(join(beside, file.path), file.bytes);
      const list = files.map(({ path, bytes }) => ({ path, bytes: bytes.length }));
      await put(
        join(beside, LIST),
        new TextEncoder().encode(`${JSON.stringify({ files: list }, null, 1)}\n`),
      );
      if (await isThere(target)) await moveInto(target, beside, files);
      else await rename(beside, target);
    } finally {
      await rm(beside, { recursive: true, force: true });
    }
  } catch (error) {
    if (error instanceof Usage) throw error;
    throw new Usage(`${folder} cannot be written: ${reason(error)}. Nothing in it is written by half.`);
  }
}

async function put(path: string, bytes: Uint8Array): Promise<void> {
  await mkdir(dirname(path), { recursive: true });
  await writeFile(path, bytes);
}

async function isThere(target: string): Promise<boolean> {
  try {
    await readdir(target);
    return true;
  } catch (error) {
    if ((error as { code?: string }).code === 'ENOENT') return false;
    throw error;
  }
}

async function moveInto(target: string, beside: string, files: readonly MadeFile[]): Promise<void> {
  const before = await listBefore(target);
  if (before === undefined && (await readdir(target)).length > 0)
    throw new Usage(
      `${target} holds other things. Give a new or empty folder, or one made by this command before.`,
    );
  for (const { path } of files) {
    await mkdir(dirname(join(target, path)), { recursive: true });
    await rename(join(beside, path), join(target, path));
  }
  await rename(join(beside, LIST), join(target, LIST));
  const kept = new Set(files.map(({ path }) => path));
  for (const path of before ?? []) if (!kept.has(path)) await rm(join(target, path), { force: true });
}

/** Paths of the set written before, or undefined where the folder has none. */
async function listBefore(target: string): Promise<readonly string[] | undefined> {
  try {
    const list = JSON.parse(await readFile(join(target, LIST), 'utf8')) as { files?: { path?: unknown }[] };
    return (list.files ?? []).flatMap(({ path }) =>
      typeof path === 'string' && !path.startsWith('/') && !path.split('/').includes('..') ? [path] : [],
    );
  } catch {
    return undefined;
  }
}

import { readFile, stat } from 'node:fs/promises';
import { MOST_TEXT, ok, type Refusal, type Result, readText, refuse } from '@panewright/contract';
import { Usage } from './exits.ts';

/** A JSON file, or standard input for `-`. A file that is not there is a mistake of the call. */
export async function readJson(path: string): Promise<Result<unknown, Refusal>> {
  if (path === '-') return readText(await readStandardInput());
  try {
    const { size } = await stat(path);
    if (size > 4 * MOST_TEXT) return refuse({ code: 'TEXT_TOO_LONG', length: size, most: MOST_TEXT });
    return readText(await readFile(path, 'utf8'));
  } catch (error) {
    throw new Usage(`${path} cannot be read: ${reason(error)}.`);
  }
}

async function readStandardInput(): Promise<string> {
  const chunks: Buffer[] = [];
  for await (const chunk of process.stdin) chunks.push(chunk as Buffer);
  return Buffer.concat(chunks).toString('utf8');
}

export function reason(error: unknown): string {
  switch ((error as { code?: string }).code) {
    case 'ENOENT':
      return 'it is not there';
    case 'EISDIR':
      return 'it is a folder';
    case 'ENOTDIR':
      return 'a part of the path is not a folder';
    case 'EACCES':
    case 'EPERM':
      return 'permission is lacking';
    case 'ENOSPC':
      return 'the disk is full';
    case 'EROFS':
      return 'the disk may not be written to';
    default:
      return String((error as Error).message ?? error);
  }
}

/** Job and catalogue as the input of an operation. */
export async function designInput(
  job: string,
  catalogue: string | undefined,
): Promise<Result<Record<string, unknown>, Refusal>> {
  const read = await readJson(job);
  if (!read.ok) return read;
  if (catalogue === undefined) return ok({ job: read.value });
  const shop = await readJson(catalogue);
  return shop.ok ? ok({ job: read.value, catalogue: shop.value }) : shop;
}

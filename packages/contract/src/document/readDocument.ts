import {
  type Catalogue,
  catalogue,
  type DocumentKind,
  type Job,
  job,
  migrate,
  type VersionRefusal,
} from '@panewright/design';
import { ok, type Result, refuse } from '@panewright/quantity';
import type { z } from 'zod';
import type { Issue } from './issue.ts';
import { scan } from './scan.ts';
import { issuesOf } from './zodIssues.ts';

/** Characters of JSON text; a job of 400 openings with every reading and note has about a third of it. */
export const MOST_TEXT = 10_000_000;

export type DocumentRefusal =
  | VersionRefusal
  | { readonly code: 'TEXT_NOT_JSON'; readonly position: number | null; readonly near: string }
  | { readonly code: 'TEXT_TOO_LONG'; readonly length: number; readonly most: number }
  | { readonly code: 'DOCUMENT_INVALID'; readonly kind: DocumentKind; readonly issues: readonly Issue[] };

/**
 * A foreign value as a job of the newest version.
 *
 * @refuses any `DocumentRefusal`: nothing is mended, cut to a limit or left out
 */
export const readJob = (value: unknown): Result<Job, DocumentRefusal> => readDocument('job', job, value);

/** A foreign value as a catalogue of the newest version; refuses as `readJob` does. */
export const readCatalogue = (value: unknown): Result<Catalogue, DocumentRefusal> =>
  readDocument('catalogue', catalogue, value);

function readDocument<S extends z.ZodType>(
  kind: DocumentKind,
  schema: S,
  value: unknown,
): Result<z.output<S>, DocumentRefusal> {
  const found = scan(value);
  if (found) return refuse({ code: 'DOCUMENT_INVALID', kind, issues: [found] });
  const newest = migrate(kind, value);
  if (!newest.ok) return newest;
  const parsed = schema.safeParse(newest.value);
  if (parsed.success) return ok(parsed.data);
  return refuse({ code: 'DOCUMENT_INVALID', kind, issues: issuesOf(parsed.error, newest.value) });
}

/**
 * JSON text as a value.
 *
 * @refuses TEXT_TOO_LONG, TEXT_NOT_JSON with the position where reading stopped, where the engine tells it
 */
export function readText(text: string): Result<unknown, DocumentRefusal> {
  if (text.length > MOST_TEXT) return refuse({ code: 'TEXT_TOO_LONG', length: text.length, most: MOST_TEXT });
  const plain = text.replace(/^\uFEFF/, '');
  try {
    return ok(JSON.parse(plain) as unknown);
  } catch (error) {
    const match = /position (\d+)/.exec(String(error));
    const position = match ? Number(match[1]) : null;
    const near =
      position === null ? plain.slice(0, 20) : plain.slice(Math.max(0, position - 10), position + 10);
    return refuse({ code: 'TEXT_NOT_JSON', position, near });
  }
}

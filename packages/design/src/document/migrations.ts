import { ok, type Result, refuse } from '@panewright/quantity';

export type DocumentKind = 'job' | 'catalogue';

/** One step of a document's format: it takes a document of `from` to the next version. */
export interface Migration {
  readonly from: number;
  readonly migrate: (document: Readonly<Record<string, unknown>>) => Record<string, unknown>;
}

/** The steps of one kind of document, oldest first. The newest version is one past the last step's `from`. */
export interface MigrationChain {
  readonly format: string;
  readonly steps: readonly Migration[];
}

/** Every version since the first can be opened. A step once released is never changed. */
export const migrationChains: Readonly<Record<DocumentKind, MigrationChain>> = {
  job: {
    format: 'panewright.job',
    // Version 2 knows two more kinds of survey. What version 1 held is as it was.
    // Version 3 may say more of holding, of the job's drawing and of its customer's language; all of it may be left out.
    steps: [
      { from: 1, migrate: (document) => ({ ...document }) },
      { from: 2, migrate: (document) => ({ ...document }) },
    ],
  },
  catalogue: {
    format: 'panewright.catalogue',
    // Version 2 may list more that a shop keeps; all of it may be left out.
    steps: [{ from: 1, migrate: (document) => ({ ...document }) }],
  },
};

export type VersionRefusal =
  | { readonly code: 'DOCUMENT_NOT_AN_OBJECT'; readonly kind: DocumentKind }
  | {
      readonly code: 'DOCUMENT_OTHER_FORMAT';
      readonly kind: DocumentKind;
      readonly found: string | null;
      readonly wanted: string;
    }
  | {
      readonly code: 'DOCUMENT_VERSION_UNREADABLE';
      readonly kind: DocumentKind;
      readonly found: string | null;
    }
  | {
      readonly code: 'DOCUMENT_NEWER';
      readonly kind: DocumentKind;
      readonly found: number;
      readonly newest: number;
    };

/**
 * The newest version a chain leads to.
 *
 * @source none: a count of the steps
 */
export const newestVersion = (chain: MigrationChain): number => chain.steps.length + 1;

/** True when the steps lead from version 1 on without a gap. */
export const isUnbroken = (chain: MigrationChain): boolean =>
  chain.steps.every((step, index) => step.from === index + 1);

/**
 * A document of any known version as one of the newest. Only its `format` and `version` are looked at.
 *
 * @refuses any `VersionRefusal`: a document of another format, of no version, or of a version newer than this program
 */
export function migrate(
  kind: DocumentKind,
  document: unknown,
  chain: MigrationChain = migrationChains[kind],
): Result<Readonly<Record<string, unknown>>, VersionRefusal> {
  if (typeof document !== 'object' || document === null || Array.isArray(document))
    return refuse({ code: 'DOCUMENT_NOT_AN_OBJECT', kind });
  let current = document as Readonly<Record<string, unknown>>;
  const { format, version } = current;
  if (format !== chain.format)
    return refuse({ code: 'DOCUMENT_OTHER_FORMAT', kind, found: brief(format), wanted: chain.format });
  if (typeof version !== 'number' || !Number.isInteger(version) || version < 1)
    return refuse({ code: 'DOCUMENT_VERSION_UNREADABLE', kind, found: brief(version) });
  const newest = newestVersion(chain);
  if (version > newest) return refuse({ code: 'DOCUMENT_NEWER', kind, found: version, newest });
  for (const step of chain.steps.slice(version - 1))
    current = { ...step.migrate(current), version: step.from + 1 };
  return ok(current);
}

/** A foreign value short enough to be quoted; what cannot be quoted is named by its JSON type; null where there is none. */
function brief(value: unknown): string | null {
  if (value === undefined) return null;
  if (typeof value === 'string') return value.length > 40 ? `${value.slice(0, 40)}…` : value;
  if (Array.isArray(value)) return 'array';
  return value === null || typeof value !== 'object' ? String(value) : 'object';
}

import type { Catalogue, Job, KeptPattern } from '@panewright/design';
import type { ShapeMeasure } from '@panewright/geometry';
import type { Result } from '@panewright/quantity';
import type { Messages } from './answers/words.ts';
import type { Picture } from './photos/readPicture.ts';

/** What a list of jobs shows of each. */
export interface JobSummary {
  readonly id: string;
  readonly name: string;
  readonly customer: string;
  readonly openings: number;
  /** Number of the newest revision, 1 first. */
  readonly revision: number;
  /** ISO 8601, UTC. */
  readonly savedAt: string;
  readonly removed: boolean;
}

export interface Revision {
  readonly revision: number;
  readonly savedAt: string;
  /** The revision it was made from; null for the first. */
  readonly basedOn: number | null;
  readonly note: string;
}

export interface StoredJob {
  readonly job: Job;
  readonly revision: number;
  readonly savedAt: string;
  readonly removed: boolean;
}

export interface StoredCatalogue {
  readonly catalogue: Catalogue;
  readonly revision: number;
  readonly savedAt: string;
}

export type StoreRefusal =
  | { readonly code: 'JOB_NOT_FOUND'; readonly id: string }
  | {
      readonly code: 'REVISION_NOT_FOUND';
      readonly id: string;
      readonly revision: number;
      readonly newest: number;
    }
  | { readonly code: 'JOB_EXISTS'; readonly id: string; readonly newest: number }
  | {
      readonly code: 'REVISION_STALE';
      readonly id: string;
      readonly basedOn: number;
      readonly newest: number;
      readonly savedAt: string;
    }
  | { readonly code: 'PATTERN_NOT_FOUND'; readonly id: string }
  | { readonly code: 'PATTERN_EXISTS'; readonly id: string; readonly name: string }
  | { readonly code: 'PHOTO_NOT_FOUND'; readonly id: string }
  | { readonly code: 'PHOTO_EXISTS'; readonly id: string };

export type Stored<T> = Promise<Result<T, StoreRefusal>>;

/**
 * Where jobs are kept. Every save is a new revision and names the one it was made from (`basedOn`; null makes a new
 * job): it is refused when that is not the newest. A save that was answered is on the disk. Removing keeps all revisions.
 */
export interface JobStore {
  list(): Promise<readonly JobSummary[]>;
  open(id: string, revision?: number): Stored<StoredJob>;
  save(save: { readonly job: Job; readonly basedOn: number | null; readonly note: string }): Stored<Revision>;
  revisions(id: string): Stored<readonly Revision[]>;
  /** Makes an old revision the newest again, as a revision of its own. Brings back a removed job. */
  restore(restore: {
    readonly id: string;
    readonly revision: number;
    readonly basedOn: number;
  }): Stored<Revision>;
  remove(remove: { readonly id: string; readonly basedOn: number }): Stored<Revision>;
}

/** Where the shop's catalogue is kept. Before the first save it is the one a new shop begins with, as revision 0. */
export interface CatalogueStore {
  open(): Promise<StoredCatalogue>;
  save(save: { readonly catalogue: Catalogue; readonly basedOn: number }): Stored<Revision>;
}

export interface StoredPattern {
  readonly pattern: KeptPattern;
  /** ISO 8601, UTC. */
  readonly keptAt: string;
  readonly removed: boolean;
}

/** What is looked for among kept patterns. */
export interface PatternSearch {
  /** Each has to stand somewhere in what is written of a pattern; see `patternWords`. None: all. */
  readonly terms: readonly string[];
  /** Removed ones, or those that are not. */
  readonly removed: boolean;
  /** Shapes that some motion may bring within `within` mm of this one. */
  readonly like?: { readonly measure: ShapeMeasure; readonly within: number };
  readonly most: number;
}

export interface FoundPatterns {
  /** Newest first; of those like a shape the likeliest first. */
  readonly found: readonly StoredPattern[];
  /** How many more there are. */
  readonly more: number;
}

/**
 * Where patterns are kept for later jobs. What was answered as kept is on the disk. The outline of a kept pattern never
 * changes; removing keeps it, marked.
 */
export interface PatternStore {
  /** Keeping the same again changes nothing and brings it back where it was removed. */
  keep(pattern: KeptPattern): Stored<StoredPattern>;
  open(id: string): Stored<StoredPattern>;
  find(search: PatternSearch): Promise<FoundPatterns>;
  change(change: {
    readonly id: string;
    readonly name?: string;
    readonly notes?: string;
    readonly removed?: boolean;
  }): Stored<StoredPattern>;
}

export interface KeptPhoto extends Picture {
  readonly id: string;
}

/**
 * Where photos are kept that the catalogue names. A photo is answered while the newest catalogue names it; one that is no
 * longer named, or not yet, is kept a day, so that what was taken out can be put back, and is then gone.
 */
export interface PhotoStore {
  /** Keeping the same again changes nothing; another under its id is refused. */
  keep(photo: KeptPhoto): Stored<KeptPhoto>;
  open(id: string): Stored<KeptPhoto>;
}

/** The two faces the sheets are set in, as the bytes of font files. */
export interface FontBytes {
  readonly regular: Uint8Array;
  readonly bold: Uint8Array;
}

/** What a computation may take along. A door that cannot give one leaves it out. */
export interface Tools {
  readonly fonts?: () => Promise<FontBytes>;
  /** Told how much of a long work is done, in steps of it; each stage counts its own. */
  readonly progress?: (done: number, of: number, stage?: WorkStage) => void;
  /** The language its sentences are in; English where none is given. */
  readonly messages?: Messages;
}

/** What a long work is at: the plan it begins with, or what it makes of it. */
export type WorkStage = 'plan' | 'sheets';

/** What an operation on what is kept needs from outside. */
export interface Ports {
  readonly jobs: JobStore;
  readonly catalogues: CatalogueStore;
  readonly patterns: PatternStore;
  readonly photos: PhotoStore;
}

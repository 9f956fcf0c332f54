/** Jobs and catalogues: which revision is the newest, and what the list shows. */
export interface DocumentTable {
  kind: 'job' | 'catalogue';
  id: string;
  newest: number;
  removed: number;
  saved_at: string;
  name: string;
  customer: string;
  openings: number;
}

/** Every revision ever saved. A row, once there, is never changed. */
export interface RevisionTable {
  kind: 'job' | 'catalogue';
  id: string;
  revision: number;
  saved_at: string;
  based_on: number | null;
  note: string;
  /** JSON text. */
  document: string;
}

/** Patterns kept for later jobs, with what they are found by. */
export interface PatternTable {
  id: string;
  kept_at: string;
  removed: number;
  /** As `patternWords` gives them. */
  words: string;
  /** The first of the measure's waves: the length round the hull over 2π, mm. */
  around: number;
  /** `ShapeMeasure` as JSON text. */
  measure: string;
  /** JSON text. */
  document: string;
}

/** Photos that offcuts of the catalogue name. */
export interface PhotoTable {
  id: string;
  media_type: 'image/jpeg' | 'image/png' | 'image/webp';
  width: number;
  height: number;
  /** 1 while the newest catalogue names it. */
  named: number;
  /** When that last changed, ISO 8601, UTC. */
  since: string;
  bytes: Buffer;
}

export interface Tables {
  document: DocumentTable;
  revision: RevisionTable;
  pattern: PatternTable;
  photo: PhotoTable;
}

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

export interface Tables {
  document: DocumentTable;
  revision: RevisionTable;
}

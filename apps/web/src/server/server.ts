import type {
  Catalogue,
  Job,
  JobSummary,
  KeptPattern,
  OperationInput,
  OperationOutput,
  Refused as RefusedBody,
  Revision,
  Tools,
} from '../contract.ts';
import type { SaveAnswer } from '../job/autosave.ts';

export type SheetFile = OperationOutput<'sheets'>['files'][number];

/** Told how far a long work is, and at what stage. */
export type Told = NonNullable<Tools['progress']>;

/** What the page asks of the server. One implementation speaks HTTP; a test may stand another in its place. */
export interface Server {
  readonly listJobs: () => Promise<readonly JobSummary[]>;
  readonly addJob: (job: Job) => Promise<void>;
  readonly demoJob: () => Promise<Job>;
  readonly openJob: (
    id: string,
    revision?: number,
  ) => Promise<{ readonly job: Job; readonly revision: number }>;
  /** `basedOn` null: a job the server does not have yet. */
  readonly saveJob: (job: Job, basedOn: number | null, note?: string) => Promise<SaveAnswer>;
  readonly removeJob: (id: string, basedOn: number) => Promise<void>;
  readonly revisions: (id: string) => Promise<readonly Revision[]>;
  readonly restore: (id: string, revision: number, basedOn: number) => Promise<SaveAnswer>;
  readonly openCatalogue: () => Promise<{ readonly catalogue: Catalogue; readonly revision: number }>;
  readonly saveCatalogue: (catalogue: Catalogue, basedOn: number) => Promise<SaveAnswer>;
  readonly referenceSheets: (
    input: OperationInput<'referenceSheets'>,
  ) => Promise<OperationOutput<'referenceSheets'>>;
  readonly offcutLabels: (input: OperationInput<'offcutLabels'>) => Promise<OperationOutput<'offcutLabels'>>;
  /** `told` is called with how far the work is: panel by panel of its plan, then sheet by sheet. */
  readonly sheets: (
    input: OperationInput<'sheets'>,
    signal: AbortSignal,
    told: Told,
  ) => Promise<readonly SheetFile[]>;
  /** The size it is kept in, as shown. */
  readonly keepPhoto: (id: string, base64: string) => Promise<OperationOutput<'keepPhoto'>>;
  readonly openPhoto: (id: string) => Promise<OperationOutput<'openPhoto'>>;
  readonly findPatterns: (search: OperationInput<'findPatterns'>) => Promise<OperationOutput<'findPatterns'>>;
  readonly keepPattern: (pattern: KeptPattern) => Promise<void>;
  readonly describePattern: (id: string, name: string, notes: string) => Promise<void>;
  readonly removePattern: (id: string) => Promise<void>;
  readonly restorePattern: (id: string) => Promise<void>;
}

/** The server answered, and said no: its words. */
export class Refused extends Error {
  override readonly name = 'Refused';
  readonly refusal: RefusedBody['refusal'];
  constructor({ refusal, say }: RefusedBody) {
    super([say.what, say.do].filter(Boolean).join(' '));
    this.refusal = refusal;
  }
}

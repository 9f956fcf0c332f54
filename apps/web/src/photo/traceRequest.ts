import type {
  LineChoice,
  OutlineSurvey,
  PhotoSetup,
  PhotoView,
  Refusal,
  TappedLine,
  TraceReport,
} from '../contract.ts';

/** What the page asks of the tracing worker. */
export interface TraceAsked {
  readonly photos: readonly { readonly name: string; readonly bytes: Uint8Array }[];
  readonly setup: PhotoSetup;
  readonly line?: LineChoice;
  readonly taps?: TappedLine;
  readonly date: string;
}

/** Of a trace, what the page shows. */
export interface Traced {
  readonly survey: OutlineSurvey;
  readonly views: readonly PhotoView[];
  readonly width: TraceReport['width'];
  readonly height: TraceReport['height'];
  readonly questions: TraceReport['questions'];
  readonly timings: TraceReport['timings'];
}

export type TraceStep = 'photos' | 'library' | 'markers' | 'adjustment' | 'ink' | 'fit' | 'uncertainty';

export type TraceWord =
  | { readonly kind: 'step'; readonly step: TraceStep; readonly photo: number }
  | { readonly kind: 'traced'; readonly traced: Traced }
  | { readonly kind: 'refused'; readonly refusal: Refusal }
  | { readonly kind: 'fault'; readonly message: string };

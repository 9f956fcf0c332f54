import { type LaidPlace, type LayFrame, type LaySearch, startLaySearch, stepLaySearch } from '../contract.ts';

export interface LongerRequest {
  readonly frame: LayFrame;
  readonly places: readonly LaidPlace[];
  readonly seed: number;
}

export type LongerMessage =
  | { readonly kind: 'start'; readonly request: LongerRequest }
  | { readonly kind: 'pause' }
  | { readonly kind: 'goOn' };

/** The best so far, sent after each stretch of the search. */
export interface LongerAnswer {
  readonly places: readonly LaidPlace[];
  readonly length: number;
  readonly done: boolean;
}

/** Evaluations planned for, about a minute of one core, and between two answers, a third of a second. */
const PLAN = 100_000_000;
const STRETCH = 600_000;

let search: LaySearch | null = null;
let going = false;

/** Looks for a shorter lay until it is done, paused or terminated; after a pause it goes on where it was. */
self.onmessage = ({ data }: MessageEvent<LongerMessage>) => {
  if (data.kind === 'pause') going = false;
  else {
    if (data.kind === 'start') search = begun(data.request);
    if (going) return;
    going = true;
    go();
  }
};

function begun(request: LongerRequest): LaySearch {
  const started = startLaySearch(request.frame, request.places, request.seed, PLAN);
  if (!started.ok) throw new Error(started.refusal.code);
  return started.value;
}

/** Between two stretches there is time to hear a message. */
function go(): void {
  if (!going || !search) return;
  search = stepLaySearch(search, STRETCH);
  const { places, length, done } = search;
  self.postMessage({ places, length, done } satisfies LongerAnswer);
  if (done) going = false;
  else setTimeout(go, 0);
}

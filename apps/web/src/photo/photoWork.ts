import { createStore, type StoreApi } from 'zustand';
import {
  changeByHand,
  type HandChange,
  type LineChoice,
  type OutlineSurvey,
  type PhotoSetup,
  type Pixel,
  type Refusal,
} from '../contract.ts';
import type { TraceAsked, Traced, TraceStep, TraceWord } from './traceRequest.ts';

export interface ChosenPhoto {
  readonly name: string;
  readonly bytes: Uint8Array;
  /** Address of the picture in this browser's memory. */
  readonly url: string;
}

/** Photos, trace and changes by hand of one opening, kept while the page is open and nowhere else. */
export interface PhotoState {
  readonly photos: readonly ChosenPhoto[];
  readonly shown: number;
  readonly step: { readonly step: TraceStep; readonly photo: number } | null;
  readonly outcome:
    | { readonly kind: 'none' }
    | { readonly kind: 'stopped' }
    | { readonly kind: 'refused'; readonly refusal: Refusal }
    | { readonly kind: 'fault'; readonly message: string }
    | { readonly kind: 'traced'; readonly traced: Traced };
  /** The outline as traced and after each change; `at` is the one shown. */
  readonly history: readonly OutlineSurvey[];
  readonly at: number;
  readonly accepted: boolean;
  /** Points on the line tapped in the photo shown; null while nobody taps. */
  readonly taps: readonly Pixel[] | null;
  readonly line: LineChoice | null;
  readonly chosen: number | null;
  /** Why the last change was not made. */
  readonly why: Refusal | null;
}

export interface PhotoWork {
  readonly store: StoreApi<PhotoState>;
  readonly choose: (files: readonly File[]) => Promise<void>;
  readonly leaveOut: (photo: number) => void;
  readonly trace: (setup: PhotoSetup, date: string, how?: Pick<TraceAsked, 'line' | 'taps'>) => void;
  readonly stop: () => void;
  /** @param hand how well a hand puts an edge, one standard deviation, mm */
  readonly change: (change: HandChange, hand: number) => void;
  readonly turn: (by: 1 | -1) => void;
  readonly set: (part: Partial<Pick<PhotoState, 'shown' | 'taps' | 'chosen' | 'accepted'>>) => void;
}

const NOTHING: Pick<
  PhotoState,
  'outcome' | 'history' | 'at' | 'accepted' | 'taps' | 'line' | 'chosen' | 'why'
> = {
  outcome: { kind: 'none' },
  ...{ history: [], at: 0, accepted: false, taps: null, line: null, chosen: null, why: null },
};

const kept = new Map<string, PhotoWork>();

/** The work on one opening of one job: the same as long as the page is open. */
export function photoWorkOf(key: string): PhotoWork {
  const work = kept.get(key) ?? createPhotoWork();
  kept.set(key, work);
  return work;
}

const newWorker = () => new Worker(new URL('./trace.worker.ts', import.meta.url), { type: 'module' });

function createPhotoWork(): PhotoWork {
  const store = createStore<PhotoState>(() => ({ photos: [], shown: 0, step: null, ...NOTHING }));
  let worker: Worker | null = null;
  /** What stood before the trace under way: it comes back when that is stopped. */
  let before: PhotoState = store.getState();
  const end = () => {
    worker?.terminate();
    worker = null;
  };
  const hear = (word: TraceWord, line: LineChoice | null) => {
    if (word.kind === 'step') return store.setState({ step: word });
    end();
    if (word.kind !== 'traced') return store.setState({ ...NOTHING, step: null, outcome: word, line });
    store.setState({
      ...NOTHING,
      step: null,
      line,
      history: [word.traced.survey],
      outcome: { kind: 'traced', traced: word.traced },
    });
  };
  return {
    store,
    choose: async (files) => {
      const photos = await Promise.all(
        files.map(async (file) => ({
          name: file.name,
          bytes: new Uint8Array(await file.arrayBuffer()),
          url: URL.createObjectURL(file),
        })),
      );
      store.setState((state) => ({ ...NOTHING, photos: [...state.photos, ...photos], shown: 0 }));
    },
    leaveOut: (photo) => {
      end();
      store.setState(({ photos }) => {
        URL.revokeObjectURL(photos[photo]!.url);
        return { ...NOTHING, step: null, photos: photos.filter((_, k) => k !== photo), shown: 0 };
      });
    },
    trace: (setup, date, how = {}) => {
      end();
      before = { ...store.getState(), step: null };
      const photos = store.getState().photos.map(({ name, bytes }) => ({ name, bytes }));
      store.setState({ step: { step: 'photos', photo: 0 }, outcome: { kind: 'none' }, why: null });
      worker = newWorker();
      const line = how.line ?? null;
      worker.onmessage = ({ data }: MessageEvent<TraceWord>) => hear(data, line);
      worker.onerror = ({ message }) => hear({ kind: 'fault', message }, line);
      worker.postMessage({ photos, setup, date, ...how } satisfies TraceAsked);
    },
    stop: () => {
      end();
      store.setState(
        before.outcome.kind === 'traced' ? before : { ...NOTHING, step: null, outcome: { kind: 'stopped' } },
      );
    },
    change: (change, hand) => {
      const { history, at } = store.getState();
      const changed = changeByHand(history[at]!, history[0]!, change, hand);
      if (!changed.ok) return store.setState({ why: changed.refusal });
      const next = [...history.slice(0, at + 1), changed.value];
      store.setState({ history: next, at: next.length - 1, why: null, accepted: false });
    },
    turn: (by) =>
      store.setState(({ history, at }) => ({
        at: Math.min(Math.max(0, at + by), Math.max(0, history.length - 1)),
        accepted: false,
        why: null,
      })),
    set: (part) => store.setState(part),
  };
}

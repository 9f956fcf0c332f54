import { useStore } from 'zustand';
import { useWords } from '../text/useWords.ts';
import type { PhotoWork } from './photoWork.ts';

const LEAST = 3;

/** What can be done with the points tapped on the line. */
export function TapBar({ work, follow }: { readonly work: PhotoWork; readonly follow: () => void }) {
  const w = useWords();
  const taps = useStore(work.store, (state) => state.taps);
  if (taps === null) return null;
  return (
    <section>
      <p className="teach">{w.photo.taps.how}</p>
      <p aria-live="polite">
        {w.photo.taps.count(taps.length)}. {taps.length < LEAST ? w.photo.taps.few : ''}
      </p>
      <p className="buttons">
        <button type="button" className="main-button" disabled={taps.length < LEAST} onClick={follow}>
          {w.photo.taps.follow}
        </button>
        <button
          type="button"
          disabled={taps.length === 0}
          onClick={() => work.set({ taps: taps.slice(0, -1) })}
        >
          {w.photo.taps.back}
        </button>
        <button type="button" onClick={() => work.set({ taps: null })}>
          {w.photo.taps.leave}
        </button>
      </p>
    </section>
  );
}

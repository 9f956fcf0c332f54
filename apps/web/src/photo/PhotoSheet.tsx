import { type ReactNode, useLayoutEffect, useRef, useState } from 'react';
import { useStore } from 'zustand';
import { useWidth } from '../drawing/useSize.ts';
import { SelectField } from '../fields/fields.tsx';
import { useWords } from '../text/useWords.ts';
import { OutlineOverlay } from './OutlineOverlay.tsx';
import type { ChosenPhoto, PhotoWork } from './photoWork.ts';
import { TapOverlay } from './TapOverlay.tsx';

const ZOOMS = [1, 1.5, 2, 3, 4, 6, 8] as const;

/** How the photo lies on the screen: pixels of the photo to dots, both from the picture's top-left corner. */
export interface PhotoScale {
  /** Dots a pixel. */
  readonly scale: number;
  readonly width: number;
  readonly height: number;
}

/** The photo, as large as wanted, with what was traced over it or the points that are being tapped. */
export function PhotoSheet({ work }: { readonly work: PhotoWork }) {
  const photo = useStore(work.store, ({ photos, shown }) => photos[shown]);
  return photo ? <OnePhoto key={photo.url} work={work} photo={photo} /> : null;
}

function OnePhoto({ work, photo }: { readonly work: PhotoWork; readonly photo: ChosenPhoto }) {
  const w = useWords();
  const { photos, shown, outcome, taps } = useStore(work.store);
  const { ref, width } = useWidth<HTMLDivElement>(640);
  const [zoom, setZoom] = useState(0);
  const [natural, setNatural] = useState({ width: 4, height: 3 });
  useKeptMiddle(ref, zoom);
  const scale = (width * ZOOMS[zoom]!) / natural.width;
  const size: PhotoScale = { scale, width: natural.width * scale, height: natural.height * scale };
  return (
    <div className="photo-view">
      {photos.length > 1 ? (
        <SelectField
          label={w.photo.view.photo}
          className="field-short"
          value={String(shown)}
          options={photos.map(({ name }, k) => ({ value: String(k), label: `${k + 1}: ${name}` }))}
          set={(value) => work.set({ shown: Number(value), ...(taps ? { taps: [] } : {}) })}
        />
      ) : null}
      <Magnifier zoom={zoom} set={setZoom} />
      {/* Its own scroll bars make it a place to go to with the keyboard. */}
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable */}
      <section ref={ref} className="photo-scroll" tabIndex={0} aria-label={w.photo.view.picture(photo.name)}>
        <div className="photo-picture" style={{ width: size.width, height: size.height }}>
          <img
            src={photo.url}
            alt=""
            draggable={false}
            onLoad={({ currentTarget: { naturalWidth, naturalHeight } }) =>
              setNatural({ width: naturalWidth, height: naturalHeight })
            }
          />
          {taps !== null ? (
            <TapOverlay work={work} size={size} />
          ) : outcome.kind === 'traced' ? (
            <OutlineOverlay work={work} view={outcome.traced.views[shown]!} size={size} />
          ) : null}
        </div>
      </section>
    </div>
  );
}

function Magnifier({ zoom, set }: { readonly zoom: number; readonly set: (zoom: number) => void }) {
  const w = useWords();
  const step = (by: number, label: string, sign: ReactNode) => (
    <button
      type="button"
      aria-label={label}
      disabled={ZOOMS[zoom + by] === undefined}
      onClick={() => set(zoom + by)}
    >
      {sign}
    </button>
  );
  return (
    <p className="buttons">
      {step(-1, w.photo.view.smaller, '−')}
      {step(1, w.photo.view.larger, '+')}
      <button type="button" disabled={zoom === 0} onClick={() => set(0)}>
        {w.photo.view.whole}
      </button>
      <span className="about">{ZOOMS[zoom]} ×</span>
    </p>
  );
}

/** What was amid the window stays there when the photo is shown larger or smaller. */
function useKeptMiddle(ref: React.RefObject<HTMLDivElement | null>, zoom: number): void {
  const before = useRef(zoom);
  useLayoutEffect(() => {
    const box = ref.current;
    const ratio = ZOOMS[zoom]! / ZOOMS[before.current]!;
    before.current = zoom;
    if (!box || ratio === 1) return;
    box.scrollLeft = (box.scrollLeft + box.clientWidth / 2) * ratio - box.clientWidth / 2;
    box.scrollTop = (box.scrollTop + box.clientHeight / 2) * ratio - box.clientHeight / 2;
  }, [ref, zoom]);
}

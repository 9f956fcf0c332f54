import { useEffect, useRef, useState } from 'react';
import { type LayPlan, PLAN_SEED } from '../contract.ts';
import { useUnits } from '../fields/useUnits.ts';
import { showLength } from '../text/show.ts';
import { useWords } from '../text/useWords.ts';
import type { LongerAnswer, LongerRequest } from './layLonger.worker.ts';
import type { LayOnPage } from './useLay.ts';

interface Look {
  readonly running: boolean;
  readonly since: number;
  readonly seconds: number;
  readonly found: LongerAnswer | null;
  readonly failed: string | null;
}

interface Props {
  readonly lay: LayPlan;
  readonly page: LayOnPage;
  /** Shows a lay found so far in place of the job's own; null shows the own again. */
  readonly show: (found: LongerAnswer | null) => void;
}

/** A longer look for a shorter lay: it is watched, stopped when good enough, and taken or dropped. */
export function LongerLay({ lay, page, show }: Props) {
  const w = useWords();
  const units = useUnits();
  const worker = useRef<Worker | null>(null);
  const [look, setLook] = useState<Look | null>(null);
  const stop = () => {
    worker.current?.terminate();
    worker.current = null;
    setLook((now) => now && { ...now, running: false });
  };
  useEffect(
    () => () => {
      worker.current?.terminate();
    },
    [],
  );
  const start = () => {
    const one = new Worker(new URL('./layLonger.worker.ts', import.meta.url), { type: 'module' });
    const since = performance.now();
    worker.current = one;
    setLook({ running: true, since, seconds: 0, found: null, failed: null });
    one.onmessage = ({ data }: MessageEvent<LongerAnswer>) => {
      const seconds = Math.round((performance.now() - since) / 1000);
      setLook((now) => now && { ...now, seconds, found: data, running: !data.done });
      show(data);
    };
    one.onerror = ({ message }) => {
      stop();
      setLook((now) => now && { ...now, failed: message });
    };
    one.postMessage({ frame: page.frame, places: page.places, seed: PLAN_SEED } satisfies LongerRequest);
  };
  const finish = (take: boolean) => {
    stop();
    show(null);
    if (take && look?.found) page.take(look.found.places);
    setLook(null);
  };
  if (!look)
    return (
      <>
        <p className="about">{w.lay.searchAbout}</p>
        <button type="button" onClick={start}>
          {w.lay.search}
        </button>
      </>
    );
  const length = look.found?.length ?? lay.length.value;
  const saved = lay.length.value - length;
  return (
    <div aria-busy={look.running}>
      <p aria-live="polite">
        {look.failed ?? w.lay.searching(look.seconds, showLength(length, units))}
        {'. '}
        {look.found?.done
          ? w.lay.best
          : saved > 0.5
            ? w.lay.saved(showLength(saved, units))
            : w.lay.noneFound}
      </p>
      <div className="buttons">
        {look.running ? (
          <button type="button" onClick={stop}>
            {w.lay.stop}
          </button>
        ) : null}
        <button type="button" className="main-button" disabled={saved <= 0.01} onClick={() => finish(true)}>
          {w.lay.use}
        </button>
        <button type="button" className="quiet" onClick={() => finish(false)}>
          {w.lay.drop}
        </button>
      </div>
    </div>
  );
}

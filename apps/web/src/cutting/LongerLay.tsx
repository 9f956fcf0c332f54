import { useEffect, useRef, useState } from 'react';
import { type LayPlan, PLAN_SEED } from '../contract.ts';
import { useUnits } from '../fields/useUnits.ts';
import { showLength } from '../text/show.ts';
import { useWords } from '../text/useWords.ts';
import type { LongerAnswer, LongerMessage } from './layLonger.worker.ts';
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

/** A longer look for a shorter lay: it is watched, paused when good enough, gone on with, and taken or dropped. */
export function LongerLay({ lay, page, show }: Props) {
  const w = useWords();
  const units = useUnits();
  const { look, start, pause, goOn, finish } = useLook(page, show);
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
  const done = look.found?.done === true;
  return (
    <div aria-busy={look.running}>
      <p aria-live="polite">
        {look.failed ?? w.lay.searching(look.seconds, showLength(length, units))}
        {'. '}
        {done ? w.lay.best : saved > 0.5 ? w.lay.saved(showLength(saved, units)) : w.lay.noneFound}
      </p>
      <div className="buttons">
        {done || look.failed ? null : (
          <button type="button" onClick={look.running ? pause : goOn}>
            {look.running ? w.lay.stop : w.lay.goOn}
          </button>
        )}
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

/** The worker that looks, how long it has looked, and what it has found. */
function useLook(page: LayOnPage, show: Props['show']) {
  const worker = useRef<Worker | null>(null);
  const [look, setLook] = useState<Look | null>(null);
  useEffect(() => () => worker.current?.terminate(), []);
  const send = (message: LongerMessage) => worker.current?.postMessage(message);
  const pause = () => {
    send({ kind: 'pause' });
    setLook((now) => now && { ...now, running: false });
  };
  const goOn = () => {
    send({ kind: 'goOn' });
    setLook((now) => now && { ...now, running: true, since: performance.now() - now.seconds * 1000 });
  };
  const start = () => {
    const one = new Worker(new URL('./layLonger.worker.ts', import.meta.url), { type: 'module' });
    worker.current = one;
    setLook({ running: true, since: performance.now(), seconds: 0, found: null, failed: null });
    one.onmessage = ({ data }: MessageEvent<LongerAnswer>) => {
      setLook((now) => now && heard(now, data));
      show(data);
    };
    one.onerror = ({ message }) => setLook((now) => now && { ...now, running: false, failed: message });
    send({ kind: 'start', request: { frame: page.frame, places: page.places, seed: PLAN_SEED } });
  };
  const finish = (take: boolean) => {
    worker.current?.terminate();
    worker.current = null;
    show(null);
    if (take && look?.found) page.take(look.found.places);
    setLook(null);
  };
  return { look, start, pause, goOn, finish };
}

function heard(now: Look, found: LongerAnswer): Look {
  const seconds = now.running ? Math.round((performance.now() - now.since) / 1000) : now.seconds;
  return { ...now, seconds, found, running: now.running && !found.done };
}

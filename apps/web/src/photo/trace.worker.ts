import { photoReadings, tracePhotoFiles } from '../contract.ts';
import type { TraceAsked, TraceWord } from './traceRequest.ts';

const tell = (word: TraceWord) => self.postMessage(word);

self.onmessage = async ({ data }: MessageEvent<TraceAsked>) => {
  const { photos, setup, line, taps, date } = data;
  try {
    const result = await tracePhotoFiles({
      ...photoReadings(setup),
      photos,
      paper: setup.paper,
      date,
      ...(line ? { line } : {}),
      ...(taps ? { taps } : {}),
      origin: {
        ...setup,
        photos: photos.map(({ name }) => name.slice(0, 200)),
        ...(line ? { line } : {}),
        shownByHand: taps !== undefined,
      },
      onProgress: (step, photo) => tell({ kind: 'step', step, photo }),
      clock: () => performance.now(),
    });
    if (!result.ok) return tell({ kind: 'refused', refusal: result.refusal });
    const { survey, views, width, height, questions, timings } = result.value;
    tell({ kind: 'traced', traced: { survey, views, width, height, questions, timings } });
  } catch (fault) {
    tell({ kind: 'fault', message: fault instanceof Error ? fault.message : String(fault) });
  }
};

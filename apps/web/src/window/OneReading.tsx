import type { Draft } from 'immer';
import { useCurrent } from '../app/useCurrent.ts';
import type { Job, Opening, ReadingName } from '../contract.ts';
import { useEntry } from '../fields/useEntry.ts';
import { useUnits } from '../fields/useUnits.ts';
import { useWork } from '../job/work.ts';
import { readingsOf, setReading, shownReading } from '../openings/readingEdits.ts';
import { WALK } from '../openings/readingPlaces.ts';
import { tapeIn } from '../survey/surveyOf.ts';
import { useWords } from '../text/useWords.ts';
import { AskedDrawing } from './AskedDrawing.tsx';
import { Keypad } from './Keypad.tsx';
import { useSpeech } from './useSpeech.ts';

interface Props {
  readonly opening: Opening;
  readonly of: ReadingName;
  readonly step: number;
  readonly back: () => void;
  readonly next: () => void;
}

/** One reading: which edge is asked, on the drawing; what is typed, as it is typed; the keys. */
export function OneReading({ opening, of, step, back, next }: Props) {
  const w = useWords();
  const { job } = useWork();
  const units = useUnits();
  const { plan, stale } = useCurrent();
  const index = readingsOf(opening, of)[0];
  const reading = index === undefined ? undefined : tapeIn(opening).readings[index];
  const key = `reading.${opening.id}.${of}.0`;
  const put = (text: string) => (draft: Draft<Job>) => setReading(draft, opening.id, of, 0, text);
  const entry = useEntry({
    document: job,
    entry: key,
    shown: reading ? shownReading(reading, units) : '',
    take: (text) => job.edit(key, put(text))?.sentence ?? null,
  });
  const speech = useSpeech(entry.type);
  const suspect = plan?.shape?.readings.find((one) => one.index === index)?.suspect;
  const note = entry.sentence ?? (suspect ? w.openings.suspect : null);
  const leave = (then: () => void) => () => {
    entry.leave();
    then();
  };
  return (
    <form
      className="window-reading"
      onSubmit={(event) => {
        event.preventDefault();
        leave(next)();
      }}
    >
      <p className="window-step">{w.window.step(step + 1, WALK.length)}</p>
      <AskedDrawing plan={plan} of={of} stale={stale} />
      <div className="window-entry">
        <label htmlFor={entry.id}>
          <b>{w.readings.long[of]}</b> <span className="about">{w.window.from[of]}</span>
        </label>
        <input
          id={entry.id}
          value={entry.text}
          // The keys below stand for the phone's own keyboard; a keyboard that is there types as well.
          inputMode="none"
          autoComplete="off"
          enterKeyHint="next"
          aria-invalid={entry.sentence ? true : undefined}
          aria-describedby={note ? `${entry.id}-note` : undefined}
          onChange={(event) => entry.type(event.target.value)}
          onBlur={entry.leave}
        />
        {note ? (
          <p id={`${entry.id}-note`} className="reading-sentence" role="alert">
            {note}
          </p>
        ) : null}
        {speech ? (
          <p className="window-speak">
            <button type="button" onClick={speech.listen} aria-pressed={speech.listening}>
              {speech.listening ? w.window.listening : w.window.speak}
            </button>
            {speech.failed ? <span role="status"> {w.window.unheard}</span> : null}
          </p>
        ) : null}
      </div>
      <Keypad text={entry.text} units={units} type={entry.type} />
      <div className="window-steps">
        <button type="button" disabled={step === 0} onClick={leave(back)}>
          {w.window.back}
        </button>
        <button type="submit" className="main-button">
          {w.window.next}
        </button>
      </div>
    </form>
  );
}

import type { Draft } from 'immer';
import type { CSSProperties } from 'react';
import type { Job, Opening, ReadingName, ReadingResult } from '../contract.ts';
import type { XY } from '../drawing/view.ts';
import { useEntry } from '../fields/useEntry.ts';
import { useUnits } from '../fields/useUnits.ts';
import { useWork } from '../job/work.ts';
import { tapeIn } from '../survey/surveyOf.ts';
import { useWords } from '../text/useWords.ts';
import { readingsOf, setReading, shownReading } from './readingEdits.ts';

interface PlaceProps {
  readonly opening: Opening;
  readonly of: ReadingName;
  readonly results: readonly ReadingResult[];
  readonly place: XY;
  /** How many entries of this kind to show; more than one where it was measured again. */
  readonly count: number;
  readonly onActive: (of: ReadingName | null) => void;
}

/** The entries of one kind of reading, at the place on the drawing where it was measured. */
export function ReadingPlace({ opening, of, results, place, count, onActive }: PlaceProps) {
  const taken = readingsOf(opening, of);
  return (
    <div className="reading-place" style={{ '--x': `${place.x}px`, '--y': `${place.y}px` } as CSSProperties}>
      {Array.from({ length: Math.max(1, count) }, (_, nth) => (
        <ReadingEntry
          // The nth reading of its kind is what the entry is.
          key={nth}
          opening={opening}
          of={of}
          nth={nth}
          result={results.find((one) => one.index === taken[nth])}
          onActive={onActive}
        />
      ))}
    </div>
  );
}

interface EntryProps {
  readonly opening: Opening;
  readonly of: ReadingName;
  readonly nth: number;
  readonly result: ReadingResult | undefined;
  readonly onActive: (of: ReadingName | null) => void;
}

function ReadingEntry({ opening, of, nth, result, onActive }: EntryProps) {
  const w = useWords();
  const { job } = useWork();
  const units = useUnits();
  const index = readingsOf(opening, of)[nth];
  const reading = index === undefined ? undefined : tapeIn(opening).readings[index];
  const key = `reading.${opening.id}.${of}.${nth}`;
  const put = (text: string) => (draft: Draft<Job>) => setReading(draft, opening.id, of, nth, text);
  const entry = useEntry({
    document: job,
    entry: key,
    shown: reading ? shownReading(reading, units) : '',
    // Emptied to be typed anew, the drawing stays; left empty, the reading is taken out.
    take: (text) => (text.trim() === '' ? null : (job.edit(key, put(text))?.sentence ?? null)),
  });
  const name = nth === 0 ? w.readings.long[of] : w.readings.again(nth + 1, w.readings.long[of]);
  const state = entry.sentence
    ? ' reading-wrong'
    : result?.suspect
      ? ' reading-suspect'
      : reading
        ? ''
        : ' reading-empty';
  return (
    <div className={`reading${state}`}>
      <span aria-hidden="true" className="reading-short">
        {w.readings.short[of]}
      </span>
      <label htmlFor={entry.id} className="reading-long">
        {name}
      </label>
      <input
        id={entry.id}
        value={entry.text}
        autoComplete="off"
        spellCheck={false}
        aria-invalid={entry.sentence ? true : undefined}
        aria-describedby={entry.sentence || result?.suspect ? `${entry.id}-note` : undefined}
        onChange={(event) => entry.type(event.target.value)}
        onBlur={() => {
          if (entry.text.trim() === '' && reading) job.edit(key, put(''));
          entry.leave();
          onActive(null);
        }}
        onFocus={(event) => {
          entry.focus(event);
          onActive(of);
        }}
      />
      {entry.sentence ? (
        <p id={`${entry.id}-note`} className="reading-sentence" role="alert">
          {entry.sentence}
        </p>
      ) : result?.suspect ? (
        <p id={`${entry.id}-note`} className="reading-note">
          {w.openings.suspect}
        </p>
      ) : null}
    </div>
  );
}

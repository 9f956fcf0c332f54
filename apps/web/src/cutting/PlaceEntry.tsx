import { type ReactNode, useEffect, useId, useState } from 'react';
import { lengthEntry, readLengthEntry } from '../fields/lengthEntry.ts';
import { useUnits } from '../fields/useUnits.ts';

interface Props {
  readonly label: ReactNode;
  readonly value: number;
  /** Says why it cannot be so, or null. */
  readonly set: (value: number) => string | null;
}

/** A length that is taken when it is finished, by Enter or on leaving: half a number would move the piece. */
export function PlaceEntry({ label, value, set }: Props) {
  const id = useId();
  const units = useUnits();
  const shown = lengthEntry(value, units);
  const [text, setText] = useState(shown);
  const [sentence, say] = useState<string | null>(null);
  useEffect(() => {
    setText(shown);
    say(null);
  }, [shown]);
  const finish = () => {
    if (text === shown) return;
    const read = readLengthEntry(text, units);
    say(read.ok ? set(read.value) : read.sentence);
  };
  return (
    <div className={`field field-short${sentence ? ' field-wrong' : ''}`}>
      <label htmlFor={id}>{label}</label>
      <span className="field-line">
        <input
          id={id}
          className="numeric"
          autoComplete="off"
          value={text}
          aria-invalid={sentence ? true : undefined}
          aria-describedby={sentence ? `${id}-note` : undefined}
          onChange={(event) => setText(event.target.value)}
          onBlur={finish}
          onKeyDown={(event) => event.key === 'Enter' && finish()}
        />
      </span>
      {sentence ? (
        <p id={`${id}-note`} className="field-sentence" role="alert">
          {sentence}
        </p>
      ) : null}
    </div>
  );
}

import type { ReactNode } from 'react';
import type { Entry } from './useEntry.ts';

interface FieldProps {
  readonly label: ReactNode;
  readonly entry: Entry;
  readonly unit?: string | undefined;
  readonly className?: string | undefined;
  readonly placeholder?: string | undefined;
  readonly numeric?: boolean | undefined;
  /** Shown under the field while nothing is wrong. */
  readonly about?: ReactNode;
  /** Beside the field, e.g. a button that takes an own choice back. */
  readonly beside?: ReactNode;
  readonly hideLabel?: boolean | undefined;
}

/** A labelled line to write on, with its unit, its help and the sentence that says what is wrong. */
export function Field({
  label,
  entry,
  unit,
  className,
  placeholder,
  numeric,
  about,
  beside,
  hideLabel,
}: FieldProps) {
  const noteId = `${entry.id}-note`;
  const note = entry.sentence ?? about;
  return (
    <div className={`field${entry.sentence ? ' field-wrong' : ''}${className ? ` ${className}` : ''}`}>
      <label htmlFor={entry.id} className={hideLabel ? 'only-heard' : undefined}>
        {label}
      </label>
      <span className="field-line">
        <input
          id={entry.id}
          value={entry.text}
          placeholder={placeholder}
          className={numeric ? 'numeric' : undefined}
          autoComplete="off"
          spellCheck={numeric ? false : undefined}
          aria-invalid={entry.sentence ? true : undefined}
          aria-describedby={note ? noteId : undefined}
          onChange={(event) => entry.type(event.target.value)}
          onBlur={entry.leave}
          onFocus={numeric ? entry.focus : undefined}
        />
        {unit ? <span className="field-unit">{unit}</span> : null}
        {beside}
      </span>
      {note ? (
        <p
          id={noteId}
          className={entry.sentence ? 'field-sentence' : 'field-about'}
          role={entry.sentence ? 'alert' : undefined}
        >
          {note}
        </p>
      ) : null}
    </div>
  );
}

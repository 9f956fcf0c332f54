import { type ReactNode, useId } from 'react';

interface Props {
  readonly label: ReactNode;
  readonly value: string;
  readonly set: (value: string) => void;
  readonly unit?: string;
  readonly about?: string;
  /** What is wrong with it. */
  readonly sentence?: string | null;
  readonly numeric?: boolean;
  readonly className?: string;
}

/** A line to write on that belongs to no document: a choice of this browser. */
export function LocalField({ label, value, set, unit, about, sentence, numeric, className }: Props) {
  const id = useId();
  const note = sentence ?? about;
  return (
    <div className={`field${sentence ? ' field-wrong' : ''}${className ? ` ${className}` : ''}`}>
      <label htmlFor={id}>{label}</label>
      <span className="field-line">
        <input
          id={id}
          value={value}
          className={numeric ? 'numeric' : undefined}
          inputMode={numeric ? 'decimal' : undefined}
          autoComplete="off"
          spellCheck={false}
          aria-invalid={sentence ? true : undefined}
          aria-describedby={note ? `${id}-note` : undefined}
          onChange={(event) => set(event.target.value)}
        />
        {unit ? <span className="field-unit">{unit}</span> : null}
      </span>
      {note ? (
        <p id={`${id}-note`} className={sentence ? 'field-sentence' : 'field-about'}>
          {note}
        </p>
      ) : null}
    </div>
  );
}

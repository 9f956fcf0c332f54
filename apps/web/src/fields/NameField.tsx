import { type ReactNode, useId } from 'react';

interface Props {
  readonly label: ReactNode;
  readonly value: string;
  readonly set: (value: string) => void;
  /** Letters at most. */
  readonly most: number;
  /** What is wrong with it, or null. */
  readonly sentence: string | null;
  readonly placeholder?: string;
  readonly wide?: boolean;
}

/** A name on a form that is sent as a whole: nothing is taken over, or refused, before that. */
export function NameField({ label, value, set, most, sentence, placeholder, wide }: Props) {
  const id = useId();
  return (
    <div className={`field${wide ? ' field-wide' : ''}${sentence ? ' field-wrong' : ''}`}>
      <label htmlFor={id}>{label}</label>
      <span className="field-line">
        <input
          id={id}
          value={value}
          maxLength={most}
          placeholder={placeholder}
          aria-invalid={sentence ? true : undefined}
          aria-describedby={sentence ? `${id}-note` : undefined}
          onChange={(event) => set(event.target.value)}
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

import type { ReactNode } from 'react';
import { useId } from 'react';
import type { Problem } from '../job/documentStore.ts';
import { local } from '../text/decimals.ts';
import { useWords } from '../text/useWords.ts';
import { Field } from './Field.tsx';
import { type LengthKind, lengthEntry, readLengthEntry, sayInUnit } from './lengthEntry.ts';
import { moneyEntry, readMoney, readNumber, readPercent } from './numberEntry.ts';
import { type AnyDocument, useEntry } from './useEntry.ts';
import { useUnits } from './useUnits.ts';

interface Common {
  readonly document: AnyDocument;
  readonly entry: string;
  readonly label: ReactNode;
  readonly className?: string;
  readonly about?: ReactNode;
  readonly beside?: ReactNode;
  readonly hideLabel?: boolean;
}

interface TextProps extends Common {
  readonly value: string;
  readonly set: (value: string) => Problem | null;
  readonly placeholder?: string;
}

export function TextField({ document, entry, value, set, ...rest }: TextProps) {
  const state = useEntry({ document, entry, shown: value, take: (text) => set(text)?.sentence ?? null });
  return <Field entry={state} {...rest} />;
}

export function TextArea({ document, entry, value, set, label, about }: TextProps) {
  const state = useEntry({ document, entry, shown: value, take: (text) => set(text)?.sentence ?? null });
  const noteId = `${state.id}-note`;
  const note = state.sentence ?? about;
  return (
    <div className={`field field-wide${state.sentence ? ' field-wrong' : ''}`}>
      <label htmlFor={state.id}>{label}</label>
      <textarea
        id={state.id}
        rows={3}
        value={state.text}
        aria-invalid={state.sentence ? true : undefined}
        aria-describedby={note ? noteId : undefined}
        onChange={(event) => state.type(event.target.value)}
        onBlur={state.leave}
      />
      {note ? (
        <p id={noteId} className={state.sentence ? 'field-sentence' : 'field-about'}>
          {note}
        </p>
      ) : null}
    </div>
  );
}

interface NumericProps extends Common {
  readonly value: number;
  readonly set: (value: number) => Problem | null;
}

/** A length in the job's unit; fractions as they are read. `thin` layers are always in millimetres. */
export function LengthField({
  document,
  entry,
  value,
  set,
  kind = 'cloth',
  ...rest
}: NumericProps & { readonly kind?: LengthKind }) {
  const w = useWords();
  const units = useUnits();
  const unit = kind === 'thin' ? 'mm' : units;
  const state = useEntry({
    document,
    entry,
    shown: lengthEntry(value, unit),
    take: (text) => {
      const read = readLengthEntry(text, unit);
      return read.ok ? sayInUnit(set(read.value), unit) : read.sentence;
    },
  });
  return (
    <Field
      entry={state}
      numeric
      unit={/[a-z"']\s*$/.test(state.text) ? undefined : w.fields.lengthUnit[unit]}
      {...rest}
    />
  );
}

export function NumberField({
  document,
  entry,
  value,
  set,
  unit,
  ...rest
}: NumericProps & { readonly unit?: string }) {
  const state = useEntry({
    document,
    entry,
    shown: local(`${value}`),
    take: (text) => {
      const read = readNumber(text);
      return read.ok ? (set(read.value)?.sentence ?? null) : read.sentence;
    },
  });
  return <Field entry={state} numeric unit={unit} {...rest} />;
}

/** A ratio in the document, shown and typed in per cent. */
export function PercentField({ document, entry, value, set, ...rest }: NumericProps) {
  const state = useEntry({
    document,
    entry,
    shown: readPercent.show(value),
    take: (text) => {
      const read = readPercent.read(text);
      return read.ok ? (set(read.value)?.sentence ?? null) : read.sentence;
    },
  });
  return <Field entry={state} numeric unit="%" {...rest} />;
}

interface MoneyProps extends NumericProps {
  readonly decimals: number;
  readonly symbol: string;
}

/** Minor units in the document, shown and typed in the currency's own. */
export function MoneyField({ document, entry, value, set, decimals, symbol, ...rest }: MoneyProps) {
  const state = useEntry({
    document,
    entry,
    shown: moneyEntry(value, decimals),
    take: (text) => {
      const read = readMoney(text, decimals);
      return read.ok ? (set(read.value)?.sentence ?? null) : read.sentence;
    },
  });
  return <Field entry={state} numeric unit={symbol} {...rest} />;
}

interface SelectProps<V extends string> {
  readonly label: ReactNode;
  readonly value: V;
  readonly options: readonly { readonly value: V; readonly label: string }[];
  readonly set: (value: V) => void;
  readonly className?: string;
  readonly beside?: ReactNode;
  readonly hideLabel?: boolean;
}

/** A choice from a list. A value the list has not (an item taken out of the catalogue) is shown as it is. */
export function SelectField<V extends string>({
  label,
  value,
  options,
  set,
  className,
  beside,
  hideLabel,
}: SelectProps<V>) {
  const id = useId();
  const known = options.some((option) => option.value === value);
  return (
    <div className={`field${className ? ` ${className}` : ''}${known ? '' : ' field-wrong'}`}>
      <label htmlFor={id} className={hideLabel ? 'only-heard' : undefined}>
        {label}
      </label>
      <span className="field-line">
        <select id={id} value={value} onChange={(event) => set(event.target.value as V)}>
          {known ? null : <option value={value}>{value} ?</option>}
          {options.map((option) => (
            <option key={option.value} value={option.value}>
              {option.label}
            </option>
          ))}
        </select>
        {beside}
      </span>
    </div>
  );
}

export function CheckField({
  label,
  value,
  set,
  disabled = false,
}: {
  readonly label: ReactNode;
  readonly value: boolean;
  readonly set: (value: boolean) => void;
  readonly disabled?: boolean;
}) {
  return (
    <label className="check">
      <input
        type="checkbox"
        checked={value}
        disabled={disabled}
        onChange={(event) => set(event.target.checked)}
      />
      <span>{label}</span>
    </label>
  );
}

import type { Draft } from 'immer';
import { useId } from 'react';
import type { Catalogue } from '../contract.ts';
import {
  CheckField,
  LengthField,
  MoneyField,
  NumberField,
  PercentField,
  SelectField,
  TextField,
} from '../fields/fields.tsx';
import { useMoneySign } from '../fields/useUnits.ts';
import type { DocumentStore, Problem } from '../job/documentStore.ts';
import { useWords } from '../text/useWords.ts';
import { type FieldSpec, PERS } from './lists.ts';

type Value = string | number | boolean;

interface Props {
  readonly document: DocumentStore<Catalogue>;
  readonly spec: FieldSpec;
  /** The entry the field belongs to. */
  readonly item: object;
  readonly itemKey: string;
  readonly itemIn: (draft: Draft<Catalogue>) => object;
}

/** One field of one entry of the catalogue, by its kind. */
export function ItemField({ document, spec, item, itemKey, itemIn }: Props) {
  const w = useWords();
  const sign = useMoneySign();
  const entry = `${itemKey}.${spec.at}`;
  const label = w.catalogue.item[spec.label];
  const value = valueAt(item, spec.at);
  const set = (next: Value): Problem | null =>
    document.edit(entry, (draft) => putAt(itemIn(draft), spec.at, next));
  const common = { document, entry, label };
  switch (spec.kind) {
    case 'text':
      return <TextField {...common} value={String(value)} set={set} />;
    case 'length':
    case 'thin':
      return (
        <LengthField
          {...common}
          kind={spec.kind === 'thin' ? 'thin' : 'cloth'}
          value={Number(value)}
          set={set}
        />
      );
    case 'number':
    case 'count':
      return <NumberField {...common} value={Number(value)} set={set} />;
    case 'percent':
      return <PercentField {...common} value={Number(value)} set={set} />;
    case 'money':
      return (
        <MoneyField
          {...common}
          decimals={sign.decimals}
          symbol={sign.symbol}
          value={Number(value)}
          set={set}
        />
      );
    case 'check':
      return <CheckField label={label} value={Boolean(value)} set={set} />;
    case 'colour':
      return <ColourField label={label} value={String(value)} set={set} />;
    case 'per':
      return (
        <SelectField
          label={label}
          value={String(value) as (typeof PERS)[number]}
          options={PERS.map((per) => ({ value: per, label: w.catalogue.item.pers[per] }))}
          set={set}
        />
      );
  }
}

interface ColourProps {
  readonly label: string;
  readonly value: string;
  readonly set: (value: string) => unknown;
}

function ColourField({ label, value, set }: ColourProps) {
  const id = useId();
  return (
    <div className="field field-short">
      <label htmlFor={id}>{label}</label>
      <span className="field-line">
        <input id={id} type="color" value={value} onChange={(event) => set(event.target.value)} />
      </span>
    </div>
  );
}

function valueAt(item: object, at: string): Value {
  return at
    .split('.')
    .reduce<unknown>((value, key) => (value as Record<string, unknown>)[key], item) as Value;
}

function putAt(item: object, at: string, value: Value): void {
  const keys = at.split('.');
  const last = keys.pop()!;
  const owner = keys.reduce<object>((inner, key) => (inner as Record<string, object>)[key]!, item);
  (owner as Record<string, Value>)[last] = value;
}

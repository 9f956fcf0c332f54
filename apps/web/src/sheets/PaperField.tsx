import { useState } from 'react';
import { formatLength, mm, type UnitName } from '../contract.ts';
import { SelectField } from '../fields/fields.tsx';
import { readLengthEntry } from '../fields/lengthEntry.ts';
import { useUnits } from '../fields/useUnits.ts';
import { showLength } from '../text/show.ts';
import { useWords } from '../text/useWords.ts';
import { LocalField } from './LocalField.tsx';
import { COMMON_ROLLS, type Paper, paperOf } from './settings.ts';

const NAMES = ['letter', 'a4', 'a3', 'tabloid'] as const;

/** A cut sheet, a common roll, or a roll of any width. `value` is a paper's key. */
export function PaperField({
  label,
  value,
  set,
}: {
  readonly label: string;
  readonly value: string;
  readonly set: (key: string) => void;
}) {
  const w = useWords();
  const units = useUnits();
  const own = value.startsWith('roll:') && !COMMON_ROLLS.includes(value);
  const [other, setOther] = useState(own);
  const [sentence, setSentence] = useState<string | null>(null);
  const [width, setWidth] = useState(own ? lengthOf(value, units) : '');
  const options = [
    ...NAMES.map((name) => ({ value: name as string, label: w.sheets.papers[name] })),
    ...COMMON_ROLLS.map((key) => ({ value: key, label: w.sheets.roll(lengthOf(key, units)) })),
    { value: 'other', label: w.sheets.otherRoll },
  ];
  return (
    <>
      <SelectField
        label={label}
        value={other ? 'other' : value}
        options={options}
        set={(next) => {
          setOther(next === 'other');
          if (next !== 'other') set(next);
        }}
      />
      {other ? (
        <LocalField
          label={w.sheets.rollWidth}
          value={width}
          numeric
          unit={units}
          sentence={sentence}
          set={(text) => {
            setWidth(text);
            const read = readLengthEntry(text, units);
            setSentence(read.ok ? null : read.sentence);
            if (read.ok) set(`roll:${Number(read.value.toFixed(3))}`);
          }}
        />
      ) : null}
    </>
  );
}

function lengthOf(key: string, units: UnitName): string {
  const paper = paperOf(key);
  if (typeof paper === 'string') return '';
  return units === 'in'
    ? formatLength(mm(paper.width), { unit: 'in', denominator: 16 })
    : formatLength(mm(paper.width), { unit: 'mm', decimals: 0 });
}

/** A paper in words. */
export function usePaperWords(): (paper: Paper) => string {
  const w = useWords();
  const units = useUnits();
  return (paper) =>
    typeof paper === 'string' ? w.sheets.papers[paper] : w.sheets.roll(showLength(paper.width, units));
}

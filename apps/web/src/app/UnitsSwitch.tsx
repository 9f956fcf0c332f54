import type { UnitName } from '../contract.ts';
import { SelectField } from '../fields/fields.tsx';
import { useWords } from '../text/useWords.ts';

interface Props {
  readonly value: UnitName;
  readonly set: (units: UnitName) => void;
}

/** Inches or millimetres, of the job or of the page it stands on. */
export function UnitsSwitch({ value, set }: Props) {
  const { units } = useWords().app;
  const options = (['in', 'mm'] as const).map((one) => ({ value: one, label: units[one] }));
  return <SelectField label={units.label} value={value} options={options} set={set} />;
}

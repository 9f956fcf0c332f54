import { useState } from 'react';
import { SelectField } from '../fields/fields.tsx';
import { useWords } from '../text/useWords.ts';

type Theme = 'system' | 'light' | 'dark';
const NAME = 'panewright.theme';

/** Light, dark, or as the system has it; kept in this browser. */
export function ThemeSwitch() {
  const w = useWords();
  const [theme, setTheme] = useState<Theme>(
    () => (document.documentElement.dataset.theme as Theme | undefined) ?? 'system',
  );
  const choose = (next: Theme) => {
    setTheme(next);
    if (next === 'system') delete document.documentElement.dataset.theme;
    else document.documentElement.dataset.theme = next;
    try {
      localStorage.setItem(NAME, next);
    } catch {
      // Storage may be closed to us; the choice then lasts as long as the page.
    }
  };
  const options = (['system', 'light', 'dark'] as const).map((one) => ({
    value: one,
    label: w.app.theme[one],
  }));
  return <SelectField label={w.app.theme.label} value={theme} options={options} set={choose} />;
}

import { useState } from 'react';
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
  return (
    <label className="bar-choice">
      <span className="only-heard">{w.app.theme.label}</span>
      <select value={theme} onChange={(event) => choose(event.target.value as Theme)}>
        {(['system', 'light', 'dark'] as const).map((one) => (
          <option key={one} value={one}>
            {w.app.theme[one]}
          </option>
        ))}
      </select>
    </label>
  );
}

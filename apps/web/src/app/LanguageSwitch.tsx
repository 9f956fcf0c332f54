import type { Language } from '../contract.ts';
import { choose, LANGUAGES } from '../text/speak.ts';
import { useSpoken } from '../text/useWords.ts';

/** The language of the page, each by its own name; kept in this browser. */
export function LanguageSwitch() {
  const { language, words } = useSpoken();
  return (
    <label className="bar-choice">
      <span className="only-heard">{words.app.language}</span>
      <select value={language} onChange={(event) => void choose(event.target.value as Language)}>
        {(Object.keys(LANGUAGES) as Language[]).map((one) => (
          <option key={one} value={one} lang={one}>
            {LANGUAGES[one].name}
          </option>
        ))}
      </select>
    </label>
  );
}

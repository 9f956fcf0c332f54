import { useId } from 'react';
import type { Language } from '../contract.ts';
import { choose, LANGUAGES } from '../text/speak.ts';
import { useSpoken } from '../text/useWords.ts';

/** The language of the page, each by its own name; kept in this browser. */
export function LanguageSwitch() {
  const id = useId();
  const { language, words } = useSpoken();
  return (
    <div className="field">
      <label htmlFor={id}>{words.app.language}</label>
      <span className="field-line">
        <select id={id} value={language} onChange={(event) => void choose(event.target.value as Language)}>
          {(Object.keys(LANGUAGES) as Language[]).map((one) => (
            <option key={one} value={one} lang={one}>
              {LANGUAGES[one].name}
            </option>
          ))}
        </select>
      </span>
    </div>
  );
}

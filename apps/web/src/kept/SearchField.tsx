import { useId } from 'react';
import { useWords } from '../text/useWords.ts';

interface Props {
  readonly text: string;
  readonly set: (text: string) => void;
}

/** Where the words are typed that a kept pattern is found by. */
export function SearchField({ text, set }: Props) {
  const w = useWords();
  const id = useId();
  return (
    <div className="field kept-search">
      <label htmlFor={id}>{w.kept.search}</label>
      <span className="field-line">
        <input
          id={id}
          type="search"
          value={text}
          maxLength={200}
          autoComplete="off"
          onChange={(event) => set(event.target.value)}
        />
      </span>
    </div>
  );
}

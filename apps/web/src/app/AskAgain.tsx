import { useWords } from '../text/useWords.ts';

/** Why there is no answer, and the way to ask again; nothing where there is one. */
export function AskAgain({
  sentence,
  again,
}: {
  readonly sentence: string | null;
  readonly again: () => void;
}) {
  const w = useWords();
  if (!sentence) return null;
  return (
    <div role="alert">
      <p className="field-sentence">{sentence}</p>
      <button type="button" onClick={again}>
        {w.app.again}
      </button>
    </div>
  );
}

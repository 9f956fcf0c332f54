import { type FormEvent, useId, useState } from 'react';
import { useWork } from '../job/work.ts';
import { useWords } from '../text/useWords.ts';
import { sentenceOf } from './useAsk.ts';

/** Keeps the job as it stands under a name, so that it is found again among all the saves. */
export function NameRevision() {
  const w = useWords();
  const c = w.keep.revisions;
  const { jobSave } = useWork();
  const [name, setName] = useState('');
  const [sentence, setSentence] = useState<string | null>(null);
  const id = useId();
  const submit = async (event: FormEvent) => {
    event.preventDefault();
    if (name.trim() === '') return setSentence(c.needName);
    try {
      const saved = await jobSave.saveAs(name.trim());
      setSentence(saved ? null : c.notYet);
      if (saved) setName('');
    } catch (error) {
      setSentence(sentenceOf(error));
    }
  };
  return (
    <form className="fields" onSubmit={submit}>
      <div className="field field-wide">
        <label htmlFor={id}>{c.nameLabel}</label>
        <span className="field-line">
          <input
            id={id}
            value={name}
            maxLength={200}
            placeholder={c.nameExample}
            aria-invalid={sentence ? true : undefined}
            aria-describedby={sentence ? `${id}-note` : undefined}
            onChange={(event) => setName(event.target.value)}
          />
        </span>
        {sentence ? (
          <p id={`${id}-note`} className="field-sentence" role="alert">
            {sentence}
          </p>
        ) : null}
      </div>
      <button type="submit">{c.name}</button>
    </form>
  );
}

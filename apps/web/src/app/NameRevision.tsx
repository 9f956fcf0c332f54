import { type FormEvent, useState } from 'react';
import { NameField } from '../fields/NameField.tsx';
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
      <NameField
        label={c.nameLabel}
        value={name}
        most={200}
        sentence={sentence}
        placeholder={c.nameExample}
        wide
        set={setName}
      />
      <button type="submit">{c.name}</button>
    </form>
  );
}

import { type FormEvent, useId, useRef, useState } from 'react';
import { NameField } from '../fields/NameField.tsx';
import { useWords } from '../text/useWords.ts';

interface Props {
  readonly name: string;
  readonly notes: string;
  readonly action: string;
  /** Gives a sentence where it could not be done. */
  readonly put: (name: string, notes: string) => Promise<string | null>;
}

/** Name and notes of a kept pattern, or of one about to be kept. */
export function DescribeForm({ name: first, notes: firstNotes, action, put }: Props) {
  const w = useWords();
  const id = useId();
  const [name, setName] = useState(first);
  const [notes, setNotes] = useState(firstNotes);
  const [sentence, setSentence] = useState<string | null>(null);
  const busy = useRef(false);
  const submit = async (event: FormEvent) => {
    event.preventDefault();
    if (name.trim() === '') return setSentence(w.kept.needName);
    if (busy.current) return;
    busy.current = true;
    setSentence(await put(name.trim(), notes));
    busy.current = false;
  };
  return (
    <form className="kept-form" onSubmit={submit}>
      <NameField
        label={w.kept.name}
        value={name}
        most={100}
        sentence={sentence}
        set={(value) => {
          setName(value);
          setSentence(null);
        }}
      />
      <div className="field field-wide">
        <label htmlFor={`${id}-notes`}>{w.kept.notes}</label>
        <textarea
          id={`${id}-notes`}
          rows={2}
          value={notes}
          maxLength={2000}
          placeholder={w.kept.notesExample}
          onChange={(event) => setNotes(event.target.value)}
        />
      </div>
      <button type="submit" className="main-button">
        {action}
      </button>
    </form>
  );
}

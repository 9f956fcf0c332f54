import { type FocusEvent, useEffect, useId, useState } from 'react';
import { useStore } from 'zustand';
import type { DocumentStore } from '../job/documentStore.ts';

/** What a field needs of the document it edits. Both documents of the page offer it. */
// biome-ignore lint/suspicious/noExplicitAny: a field edits whichever document it is handed
export type AnyDocument = DocumentStore<any>;

interface Options {
  readonly document: AnyDocument;
  /** Names the entry: refused text is kept under it, and typing on in it is one step of undo. */
  readonly entry: string;
  /** The value as it stands in the document, as text. */
  readonly shown: string;
  /** Takes over what was typed; returns a sentence where that cannot be done. */
  readonly take: (text: string) => string | null;
}

export interface Entry {
  readonly id: string;
  readonly text: string;
  readonly sentence: string | null;
  readonly type: (text: string) => void;
  readonly leave: () => void;
  readonly focus: (event: FocusEvent<HTMLInputElement | HTMLTextAreaElement>) => void;
}

/**
 * A field's life: what is typed stays as typed while the cursor is in it; each key press is tried at once; what cannot
 * be taken over is kept with its sentence, also after leaving; leaving ends the step.
 */
export function useEntry({ document, entry, shown, take }: Options): Entry {
  const id = useId();
  const [typing, setTyping] = useState<string | null>(null);
  const refused = useStore(document.store, (state) => state.refused[entry]);
  const turns = useStore(document.store, (state) => state.turns);
  // Undo and redo drop what was being typed.
  useEffect(() => setTyping(null), [turns]);

  return {
    id,
    text: typing ?? refused?.text ?? shown,
    sentence: refused?.sentence ?? null,
    type: (text) => {
      setTyping(text);
      const sentence = take(text);
      if (sentence !== null) document.refuse(entry, text, sentence);
    },
    leave: () => {
      setTyping(null);
      document.settle();
    },
    focus: (event) => event.target.select(),
  };
}

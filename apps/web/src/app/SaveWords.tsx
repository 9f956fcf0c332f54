import { useStore } from 'zustand';
import type { DocumentState, DocumentStore } from '../job/documentStore.ts';
import { useWords } from '../text/useWords.ts';
import type { Words } from '../text/words.ts';

/** Where the work on the page is kept: here, at the server, or nowhere yet. */
export function SaveWords<T>({ document }: { readonly document: DocumentStore<T> }) {
  const w = useWords();
  const save = useStore(document.store, (state) => state.save);
  const kept = useStore(document.store, (state) => state.kept);
  const revision = useStore(document.store, (state) => state.revision);
  const [text, needs] = wordsOf(save, kept, revision, w);
  return (
    <span className={needs ? 'needs' : undefined} data-kept={save.kind === 'saved' || kept === 'yes'}>
      {text}
    </span>
  );
}

type State = DocumentState<unknown>;

/** The words, and whether a person has to look. */
function wordsOf(
  save: State['save'],
  kept: State['kept'],
  revision: number,
  w: Words,
): readonly [string, boolean] {
  switch (save.kind) {
    case 'saved':
      return [w.save.saved(revision), false];
    case 'waiting':
    case 'saving':
      if (kept === 'cannot') return [w.keep.save.cannot, true];
      return [kept === 'yes' ? w.keep.save.keptSaving : w.save.waiting, false];
    case 'away':
      return kept === 'cannot' ? [w.keep.save.cannot, true] : [w.keep.save.away, false];
    case 'failed':
      return [w.save.failed(save.why), true];
    case 'conflict':
      return [w.save.conflictShort, true];
  }
}

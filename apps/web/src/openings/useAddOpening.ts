import { useLocation } from 'wouter';
import { useWork } from '../job/work.ts';
import { useWords } from '../text/useWords.ts';
import { freeId, newOpening } from './newOpening.ts';

/** Adds an opening with nothing measured and goes there. */
export function useAddOpening(stage: 'openings' | 'window' = 'openings'): () => void {
  const w = useWords();
  const { id, job } = useWork();
  const [, go] = useLocation();
  return () => {
    const { openings } = job.store.getState().document;
    const next = freeId('W', openings);
    const problem = job.edit(`add.${next}`, (draft) => {
      draft.openings.push(newOpening(next, w.openings.newName(openings.length + 1)));
    });
    job.settle();
    if (!problem) go(`/jobs/${id}/${stage}/${next}`);
  };
}

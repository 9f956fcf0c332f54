import type { ReactNode } from 'react';
import { usePlan } from '../job/work.ts';
import { useWords } from '../text/useWords.ts';

/** A stage that follows the lay: marked while it is of the job before the last edit. */
export function Late({ children }: { readonly children: ReactNode }) {
  const w = useWords();
  const working = usePlan((state) => state.working);
  const late = usePlan((state) => state.late);
  return (
    <div className={`late${working ? ' late-working' : ''}`} aria-busy={working}>
      {working ? (
        <p className="working">
          <span className="working-bar" aria-hidden="true" />
          {w.stages.working}
        </p>
      ) : null}
      {late ? children : null}
    </div>
  );
}

import { useEffect } from 'react';
import { derivePanel } from '../contract.ts';
import { useWork } from '../job/work.ts';

/** The panel of this opening is drawn large: it follows every key at once. */
export function useDrawnPanel(opening: string | undefined): void {
  const { planner } = useWork();
  useEffect(() => {
    planner.draw(opening === undefined ? null : { opening, derive: derivePanel });
    return () => planner.draw(null);
  }, [planner, opening]);
}

import { useMemo } from 'react';
import { type Finding, type Show, showOf } from '../contract.ts';
import { useCatalogue, useJob, usePlan } from '../job/work.ts';
import { useSpoken } from '../text/useWords.ts';
import { stageOf } from './stageOf.ts';

/** All that the plan has to say: of the survey at once, the rest as last worked out. */
export function useFindings(): readonly Finding[] {
  const early = usePlan((state) => state.findings);
  const late = usePlan((state) => state.late);
  return useMemo(() => {
    const fromLay = late?.findings.filter((one) => stageOf(one) === 'cutting') ?? [];
    return [...early.filter((one) => stageOf(one) !== 'cutting'), ...fromLay];
  }, [early, late]);
}

/** How this job's sentences show their numbers. */
export function useShow(): Show {
  const units = useJob((state) => state.document.units);
  const openings = useJob((state) => state.document.openings);
  const currency = useCatalogue((catalogue) => catalogue.currency);
  const language = useSpoken((state) => state.language);
  return useMemo(
    () => showOf({ units, openings }, { currency }, language),
    [units, openings, currency, language],
  );
}

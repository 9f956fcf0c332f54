import { useCallback, useEffect, useMemo, useState } from 'react';
import { sentenceOf } from '../app/useAsk.ts';
import { type Catalogue, type Job, PLAN_SEED, type WorkStage } from '../contract.ts';
import type { DocumentState } from '../job/documentStore.ts';
import { useCatalogue, useJob, useWork } from '../job/work.ts';
import type { SheetFile, Told } from '../server/server.ts';
import { today } from '../text/today.ts';
import { askedOf, isUnreadable, type SheetSettings } from './settings.ts';

export type Made =
  | {
      readonly kind: 'making';
      readonly done: number;
      readonly of: number;
      readonly stage?: WorkStage | undefined;
    }
  | { readonly kind: 'made'; readonly files: readonly SheetFile[] }
  | { readonly kind: 'stopped' }
  | { readonly kind: 'failed'; readonly sentence: string };

const BEGUN = { kind: 'making', done: 0, of: 0 } as const;

/** The revision the sheets bear: none where it cannot be saved; null while a save is on its way. */
function revisionToPrint({ save, revision }: DocumentState<Job>): string | null {
  if (save.kind === 'saved') return `${revision}`;
  return save.kind === 'failed' || save.kind === 'conflict' ? '' : null;
}

/** Asks for the sheets a moment after the last edit; a newer job supersedes an older. It can be stopped and begun again. */
export function useSheets(settings: SheetSettings): {
  readonly made: Made;
  readonly stop: () => void;
  readonly again: () => void;
} {
  const { server } = useWork();
  const job: Job = useJob((state) => state.document);
  const revision = useJob(revisionToPrint);
  const catalogue: Catalogue = useCatalogue((all) => all);
  const [made, setMade] = useState<Made>(BEGUN);
  const [round, setRound] = useState(0);
  const [controller, setController] = useState<AbortController | null>(null);
  const unreadable = isUnreadable(settings);
  const asked = JSON.stringify(askedOf(settings, catalogue, job.units));
  const input = useMemo(
    () => ({ job, catalogue, seed: PLAN_SEED, date: today(), previews: true, ...JSON.parse(asked) }),
    [job, catalogue, asked],
  );
  // A new round asks again for the same.
  useEffect(() => {
    if (unreadable) return;
    const begun = new AbortController();
    setController(begun);
    setMade(BEGUN);
    if (revision === null) return () => begun.abort();
    const timer = setTimeout(() => {
      const told: Told = (done, of, stage) =>
        begun.signal.aborted || setMade({ kind: 'making', done, of, stage });
      server.sheets({ ...input, revision }, begun.signal, told).then(
        (files) => begun.signal.aborted || setMade({ kind: 'made', files }),
        (error) => begun.signal.aborted || setMade({ kind: 'failed', sentence: sentenceOf(error) }),
      );
    }, 250);
    return () => {
      clearTimeout(timer);
      begun.abort();
    };
  }, [server, input, revision, round, unreadable]);
  const stop = useCallback(() => {
    controller?.abort();
    setMade({ kind: 'stopped' });
  }, [controller]);
  const again = useCallback(() => setRound((one) => one + 1), []);
  return { made, stop, again };
}

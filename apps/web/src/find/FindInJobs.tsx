import { useEffect, useId, useState } from 'react';
import type { Catalogue, Job } from '../contract.ts';
import { allCopies, type Copy, copyOf } from '../offline/keptDocuments.ts';
import { useWords } from '../text/useWords.ts';
import { Hits } from './Hits.tsx';
import { type Hit, searchJob } from './searchJob.ts';

interface Kept {
  readonly jobs: readonly Copy<Job>[];
  readonly catalogue: Catalogue | null;
}

/** Finds over all jobs, in the copies this browser keeps of them. `round`: read the copies anew when it changes. */
export function FindInJobs({ round }: { readonly round: number }) {
  const w = useWords();
  const id = useId();
  const [query, setQuery] = useState('');
  const [kept, setKept] = useState<Kept>({ jobs: [], catalogue: null });
  // The copies may have grown since the last round.
  useEffect(() => {
    let current = true;
    Promise.all([allCopies<Job>('job'), copyOf<Catalogue>('catalogue', 'shop')]).then(
      ([jobs, catalogue]) => current && setKept({ jobs, catalogue: catalogue?.document ?? null }),
      () => {},
    );
    return () => {
      current = false;
    };
  }, [round]);
  const hits = kept.jobs.flatMap(({ document }) => hitsIn(query, document, kept.catalogue, w.find.inOf));
  return (
    <search>
      <div className="field">
        <label htmlFor={id}>{w.find.inJobs}</label>
        <span className="field-line">
          <input id={id} type="search" value={query} onChange={(event) => setQuery(event.target.value)} />
        </span>
      </div>
      <Hits query={query} hits={hits} />
    </search>
  );
}

const hitsIn = (
  query: string,
  job: Job,
  catalogue: Catalogue | null,
  inOf: (job: string) => string,
): readonly Hit[] =>
  searchJob(query, job, { catalogue, patterns: [] }).map((hit) =>
    hit.kind === 'job' ? hit : { ...hit, detail: [hit.detail, inOf(job.name)].filter(Boolean).join(', ') },
  );

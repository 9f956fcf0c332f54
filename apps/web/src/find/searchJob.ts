import type { Catalogue, Job, PatternPlan } from '../contract.ts';

/** Something found in a job, and where it is looked at. */
export interface Hit {
  readonly kind: 'job' | 'opening' | 'pattern' | 'material' | 'note';
  readonly label: string;
  readonly detail: string;
  readonly href: string;
}

/** Letters and digits alone, small, without accents: what is typed in a hurry finds what was written with care. */
const plain = (text: string): string => text.normalize('NFD').replace(/\p{M}/gu, '').toLowerCase();

/** True where every word of the query begins somewhere in one of the texts. */
export function matches(query: string, texts: readonly string[]): boolean {
  const wanted = plain(query).split(/\s+/).filter(Boolean);
  const text = ` ${plain(texts.join(' '))}`;
  return wanted.length > 0 && wanted.every((word) => text.includes(word));
}

interface Around {
  readonly catalogue: Catalogue | null;
  readonly patterns: readonly PatternPlan[];
}

/** All that a query finds in one job: the job itself, its openings, patterns and materials. */
export function searchJob(query: string, job: Job, { catalogue, patterns }: Around): readonly Hit[] {
  if (query.trim() === '') return [];
  const base = `/jobs/${encodeURIComponent(job.id)}`;
  const hits: Hit[] = [];
  const { customer, site } = job;
  if (matches(query, [job.name, customer.name, customer.contact, site.name, job.notes, site.notes]))
    hits.push({ kind: 'job', label: job.name, detail: customer.name || site.name, href: `${base}/job` });
  for (const one of job.openings)
    if (matches(query, [one.id, one.name, one.place, one.notes]))
      hits.push({
        kind: 'opening',
        label: `${one.id} ${one.name}`,
        detail: one.place,
        href: `${base}/openings/${one.id}`,
      });
  for (const { pattern, members } of patterns) {
    const served = members.map(({ opening }) => opening).join(', ');
    if (matches(query, [pattern]))
      hits.push({
        kind: 'pattern',
        label: pattern,
        detail: served,
        href: `${base}/patterns/${members[0]!.opening}`,
      });
  }
  return [...hits, ...materialHits(query, job, catalogue, base)];
}

function materialHits(query: string, job: Job, catalogue: Catalogue | null, base: string): readonly Hit[] {
  if (!catalogue) return [];
  const named = new Map(
    [
      catalogue.fabrics,
      catalogue.bindings,
      catalogue.magnets,
      catalogue.wrapFilms,
      catalogue.tapes,
      catalogue.threads,
    ]
      .flat()
      .map(({ id, name }) => [id, name] as const),
  );
  const usedBy = new Map<string, string[]>();
  const use = (id: string | undefined, by: string) => {
    if (id !== undefined) usedBy.set(id, [...(usedBy.get(id) ?? []), by]);
  };
  const { choices } = job;
  for (const id of [
    choices.fabric,
    choices.hold.outside,
    choices.hold.inside,
    choices.wrapFilm,
    choices.tape,
    choices.thread,
  ])
    use(id, '');
  if (choices.finish.kind === 'binding') use(choices.finish.binding, '');
  for (const { id, choices: own } of job.openings)
    for (const item of [own.fabric, own.hold?.outside, own.hold?.inside, own.wrapFilm, own.tape, own.thread])
      use(item, id);
  return [...usedBy].flatMap(([id, by]): readonly Hit[] => {
    const name = named.get(id) ?? id;
    if (!matches(query, [id, name])) return [];
    const opening = by.find((one) => one !== '');
    const href = `${base}/panels${opening ? `/${opening}` : ''}`;
    return [{ kind: 'material', label: name, detail: by.filter(Boolean).join(', '), href }];
  });
}

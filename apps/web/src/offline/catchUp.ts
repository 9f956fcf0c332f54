import type { Job } from '../contract.ts';
import { fingerprint } from '../merge/documentText.ts';
import { merge } from '../merge/merge.ts';
import { sameValue } from '../merge/parts.ts';
import { Refused, type Server } from '../server/server.ts';
import { type Copy, dropEdits, type Edit, keepCopy, leftBehind } from './keptDocuments.ts';

export type CaughtUp = 'saved' | 'needsYou' | 'away';

/**
 * Saves what pages that are gone had not saved. What collides field by field is left for a person, untouched; it is
 * asked about when the job is opened.
 *
 * @returns for each job with such edits, what became of them
 */
export async function catchUp(server: Server): Promise<ReadonlyMap<string, CaughtUp>> {
  const edits = await leftBehind<Job>('job');
  const became = new Map<string, CaughtUp>();
  for (const edit of edits) {
    const one = await saveEdit(server, edit).catch(
      (error): CaughtUp => (error instanceof Refused ? 'needsYou' : 'away'),
    );
    if (became.get(edit.document.id) !== 'needsYou') became.set(edit.document.id, one);
  }
  return became;
}

/** One edit onto what the server has; a second time where another save came between. */
async function saveEdit(server: Server, { document, base, sent, key }: Edit<Job>): Promise<CaughtUp> {
  let [mine, from]: [Job, Copy<Job> | null] = [document, base];
  for (let round = 0; round < 3; round++) {
    const answer = await server.saveJob(mine, from?.revision ?? null);
    if (answer.kind === 'refused') return 'needsYou';
    if (answer.kind === 'saved') {
      await keepCopy('job', mine.id, { document: mine, revision: answer.revision });
      await dropEdits([key]);
      return 'saved';
    }
    const { job, revision } = await server.openJob(document.id);
    const arrived = sent.includes(fingerprint(job));
    const merged = merge<Job>(arrived ? job : (from?.document ?? ({} as Job)), mine, job);
    if (merged.conflicts.length > 0) return 'needsYou';
    if (sameValue(merged.document, job)) {
      await dropEdits([key]);
      return 'saved';
    }
    [mine, from] = [merged.document, { document: job, revision }];
  }
  return 'away';
}

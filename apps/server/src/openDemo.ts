import { demoJob, type Ports } from '@panewright/contract';

/** Puts the demo job in where there is no job at all yet. */
export async function putDemoIn({ jobs }: Ports): Promise<void> {
  const all = await jobs.list();
  if (all.length === 0) await jobs.save({ job: demoJob, basedOn: null, note: 'demo' });
}

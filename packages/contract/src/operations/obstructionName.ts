import type { Job } from '@panewright/design';

/**
 * What is in the way of a hold point, by name: the plan names it as OPENING.OBSTRUCTION.
 */
export function obstructionName({ openings }: Pick<Job, 'openings'>, key: string | undefined): string {
  const [opening, ...rest] = (key ?? '').split('.');
  const found = openings
    .find(({ id }) => id === opening)
    ?.obstructions.find(({ id }) => id === rest.join('.'));
  return found ? `${found.name} of ${opening}` : 'something to keep clear of';
}

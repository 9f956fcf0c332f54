import type { Job } from '@panewright/design';
import { english } from '../answers/english/english.ts';
import type { Messages } from '../answers/words.ts';

/**
 * What is in the way of a hold point, by name: the plan names it as OPENING.OBSTRUCTION.
 */
export function obstructionName(
  { openings }: Pick<Job, 'openings'>,
  key: string | undefined,
  messages: Messages = english,
): string {
  const [opening, ...rest] = (key ?? '').split('.');
  const found = openings
    .find(({ id }) => id === opening)
    ?.obstructions.find(({ id }) => id === rest.join('.'));
  return messages.obstruction(found?.name ?? '', opening ?? '');
}

import type { Draft } from 'immer';
import { useState } from 'react';
import { useCurrent } from '../app/useCurrent.ts';
import type { Choices, ChoicesOfOne, Job, Opening } from '../contract.ts';
import type { Problem } from '../job/documentStore.ts';
import { useJob, useWork } from '../job/work.ts';
import { openingIn } from '../openings/readingEdits.ts';

/** Choices are made for the whole job, or for one opening that differs. */
export type Scope = 'job' | 'one';

type Plain = Exclude<keyof ChoicesOfOne, 'hold'>;
type HoldKey = keyof Choices['hold'];

/** A change of what holds. */
export type Holding = Pick<Choices['hold'], 'by'> &
  Partial<Pick<Choices['hold'], 'outside' | 'inside' | 'pocket' | 'points'>>;

export interface ScopedChoices {
  readonly scope: Scope;
  readonly setScope: (scope: Scope) => void;
  readonly opening: Opening | undefined;
  /** What holds in this scope. */
  readonly choices: Choices;
  readonly keyOf: (what: string) => string;
  readonly set: <K extends Plain>(key: K, value: Choices[K]) => Problem | null;
  readonly setHold: <K extends HoldKey>(key: K, value: Choices['hold'][K]) => Problem | null;
  /** What holds, as one step: a pair of magnets, a magnet and a strip, or a fastener. */
  readonly setHolding: (change: Holding) => Problem | null;
  /** The same for the chosen opening alone, whatever the scope: for what was worked out for it. */
  readonly setHoldingOfOne: (change: Holding) => Problem | null;
  /** True where the chosen opening has its own. */
  readonly isOwn: (key: Plain | `hold.${HoldKey}`) => boolean;
  /** Takes an own choice back, so that the job's holds again. */
  readonly asJob: (key: Plain | `hold.${HoldKey}`) => void;
}

export function useScopedChoices(): ScopedChoices {
  const { job } = useWork();
  const { opening, plan } = useCurrent();
  const [asked, setScope] = useState<Scope>('job');
  const jobChoices = useJob((state) => state.document.choices);
  const scope = opening ? asked : 'job';
  const prefix = scope === 'job' ? 'choices' : `choices.${opening!.id}`;
  const own = (draft: Draft<Job>) => openingIn(draft, opening!.id).choices;
  return {
    scope,
    setScope,
    opening,
    choices: scope === 'job' ? jobChoices : (plan?.choices ?? jobChoices),
    keyOf: (what) => `${prefix}.${what}`,
    set: (key, value) =>
      job.edit(`${prefix}.${key}`, (draft) => {
        if (scope === 'job') Object.assign(draft.choices, { [key]: value });
        else Object.assign(own(draft), { [key]: value });
      }),
    setHold: (key, value) =>
      job.edit(`${prefix}.hold.${key}`, (draft) => {
        if (scope === 'job') Object.assign(draft.choices.hold, { [key]: value });
        else own(draft).hold = { ...own(draft).hold, [key]: value };
      }),
    setHolding: (change) =>
      job.edit(`${prefix}.hold.by`, (draft) => {
        if (scope === 'job') Object.assign(draft.choices.hold, change);
        else own(draft).hold = { ...own(draft).hold, ...change };
      }),
    setHoldingOfOne: (change) =>
      job.edit(`choices.${opening!.id}.hold.by`, (draft) => {
        own(draft).hold = { ...own(draft).hold, ...change };
      }),
    isOwn: (key) => {
      const [first, inner] = key.split('.') as [keyof ChoicesOfOne, HoldKey | undefined];
      const value = opening?.choices[first];
      return inner ? opening?.choices.hold?.[inner] !== undefined : value !== undefined;
    },
    asJob: (key) => {
      job.edit(`${prefix}.asJob.${key}`, (draft) => takeBack(own(draft), key));
      job.settle();
    },
  };
}

function takeBack(own: Draft<ChoicesOfOne>, key: string): void {
  const [first, inner] = key.split('.') as [keyof ChoicesOfOne, HoldKey | undefined];
  if (!inner) delete own[first];
  else if (own.hold) {
    delete own.hold[inner];
    if (Object.keys(own.hold).length === 0) delete own.hold;
  }
}

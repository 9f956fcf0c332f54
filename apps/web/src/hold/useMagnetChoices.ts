import { useEffect, useRef, useState } from 'react';
import type { Catalogue, Job, Language, OperationOutput } from '../contract.ts';
import { useSpoken } from '../text/useWords.ts';

export type MagnetRanking = OperationOutput<'magnetChoices'>;

export interface ChoicesRequest {
  readonly ticket: number;
  readonly job: Job;
  readonly catalogue: Catalogue;
  readonly opening: string;
  readonly language: Language;
}
export type ChoicesAnswer =
  | { readonly ticket: number; readonly choices: MagnetRanking }
  | { readonly ticket: number; readonly sentence: string };

export interface AskedChoices {
  readonly choices: MagnetRanking | null;
  readonly sentence: string | null;
  /** True while `choices` is of an earlier job, or nothing has come yet. */
  readonly working: boolean;
}

/** What is slid or typed on would only be thrown away: the work begins when nothing changed for this long, ms. */
const LULL = 350;

/** Which magnets would hold one opening, asked of a worker while `wanted`; a newer job supersedes an older. */
export function useMagnetChoices(
  job: Job,
  catalogue: Catalogue,
  opening: string | undefined,
  wanted: boolean,
): AskedChoices {
  const [state, setState] = useState<AskedChoices>({ choices: null, sentence: null, working: false });
  const language = useSpoken((state) => state.language);
  const ticket = useRef(0);
  useEffect(() => {
    if (!wanted || opening === undefined) return;
    ticket.current += 1;
    const mine = ticket.current;
    let worker: Worker | null = null;
    setState((before) => ({
      ...before,
      choices: before.choices?.opening === opening ? before.choices : null,
      working: true,
    }));
    const timer = setTimeout(() => {
      worker = new Worker(new URL('./choices.worker.ts', import.meta.url), { type: 'module' });
      worker.onmessage = ({ data }: MessageEvent<ChoicesAnswer>) => {
        if (data.ticket !== ticket.current) return;
        setState(
          'choices' in data
            ? { choices: data.choices, sentence: null, working: false }
            : { choices: null, sentence: data.sentence, working: false },
        );
        worker?.terminate();
      };
      worker.onerror = ({ message }) => setState({ choices: null, sentence: message, working: false });
      worker.postMessage({ ticket: mine, job, catalogue, opening, language } satisfies ChoicesRequest);
    }, LULL);
    return () => {
      clearTimeout(timer);
      worker?.terminate();
    };
  }, [job, catalogue, opening, wanted, language]);
  return state;
}

import { useCallback, useEffect, useState } from 'react';
import { sentenceOf } from '../app/useAsk.ts';
import type { OperationInput, OperationOutput } from '../contract.ts';
import type { Server } from '../server/server.ts';

export type KeptSearch = OperationInput<'findPatterns'>;
export type KeptAnswer = OperationOutput<'findPatterns'>;
export type FoundPattern = KeptAnswer['patterns'][number];

interface Found {
  /** The last answer; it stays while the next is awaited. */
  readonly answer: KeptAnswer | null;
  readonly asking: boolean;
  readonly sentence: string | null;
}

/** What is typed on within this time would only be thrown away, ms. */
const LULL = 200;

/** Searches kept patterns, and again when what is asked changes or on demand. */
export function useKept(server: Server, search: KeptSearch): Found & { readonly again: () => void } {
  const [found, setFound] = useState<Found>({ answer: null, asking: true, sentence: null });
  const [round, setRound] = useState(0);
  const asked = JSON.stringify(search);
  // A new round asks the same again.
  useEffect(() => {
    let current = true;
    setFound((before) => ({ ...before, asking: true }));
    const timer = setTimeout(
      () =>
        server.findPatterns(JSON.parse(asked) as KeptSearch).then(
          (answer) => current && setFound({ answer, asking: false, sentence: null }),
          (error) => current && setFound({ answer: null, asking: false, sentence: sentenceOf(error) }),
        ),
      LULL,
    );
    return () => {
      current = false;
      clearTimeout(timer);
    };
  }, [server, asked, round]);
  const again = useCallback(() => setRound((one) => one + 1), []);
  return { ...found, again };
}

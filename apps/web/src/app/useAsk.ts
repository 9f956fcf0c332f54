import { useCallback, useEffect, useState } from 'react';
import { Refused } from '../server/server.ts';
import { words } from '../text/useWords.ts';

export type Asked<T> =
  | { readonly kind: 'asking' }
  | { readonly kind: 'there'; readonly value: T }
  | { readonly kind: 'failed'; readonly sentence: string };

/** Asks the server once, and again on demand. */
export function useAsk<T>(ask: () => Promise<T>): readonly [Asked<T>, () => void] {
  const [answer, setAnswer] = useState<Asked<T>>({ kind: 'asking' });
  const [round, setRound] = useState(0);
  // `ask` is made anew on each render; a new round asks again.
  useEffect(() => {
    let current = true;
    ask().then(
      (value) => current && setAnswer({ kind: 'there', value }),
      (error) => current && setAnswer({ kind: 'failed', sentence: sentenceOf(error) }),
    );
    return () => {
      current = false;
    };
  }, [round]);
  const again = useCallback(() => setRound((one) => one + 1), []);
  return [answer, again];
}

/** What to tell of an answer that did not come. */
export const sentenceOf = (error: unknown): string =>
  error instanceof Refused ? error.message : `${words().app.noAnswer} ${words().app.noAnswerDo}`;

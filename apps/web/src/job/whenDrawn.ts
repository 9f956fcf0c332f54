import { useEffect } from 'react';

/** What waits for the first drawing; null once it stands. */
let waiting: (() => void)[] | null = [];

/** A page that draws nothing (an error, a tab not in view) still gets what follows, after this long, ms. */
const AT_LATEST = 3000;

/** Calls back once the first drawing of the page has been painted: what is fetched then does not hold it up. */
export function whenDrawn(then: () => void): void {
  if (waiting?.length === 0) setTimeout(drawn, AT_LATEST);
  if (waiting) waiting.push(then);
  else then();
}

function drawn(): void {
  const then = waiting ?? [];
  waiting = null;
  for (const one of then) one();
}

/** To be used by what holds the first drawing. */
export function useDrawn(): void {
  useEffect(() => {
    if (waiting) requestAnimationFrame(() => setTimeout(drawn, 0));
  }, []);
}

/** Script that the first drawing does without, fetched once that stands. */
export const afterDrawing = <T>(fetch: () => Promise<T>): Promise<T> =>
  new Promise((resolve, reject) => whenDrawn(() => fetch().then(resolve, reject)));

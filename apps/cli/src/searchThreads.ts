import { Worker } from 'node:worker_threads';
import { type RemoteSearcher, searcher } from '@panewright/contract';

/** Searches, each in a thread of its own, until they are ended. */
export interface SearchThreads {
  readonly searchers: readonly RemoteSearcher[];
  readonly end: () => Promise<void>;
}

/** @param program the built packWorker */
export function searchThreads(count: number, program: URL): SearchThreads {
  const workers = Array.from({ length: count }, () => new Worker(program));
  return {
    searchers: workers.map(
      (worker): RemoteSearcher =>
        (call) =>
          new Promise((resolve, reject) => {
            const answered = (answer: Awaited<ReturnType<RemoteSearcher>>) => {
              worker.off('error', reject);
              resolve(answer);
            };
            worker.once('message', answered);
            worker.once('error', reject);
            worker.postMessage(call);
          }),
    ),
    end: async () => {
      await Promise.all(workers.map((worker) => worker.terminate()));
    },
  };
}

/** The same searches in this thread, one after the other: where there are no threads, with the same lays. */
export function searchHere(count: number): SearchThreads {
  const searchers = Array.from({ length: count }, () => {
    const search = searcher();
    return async (call: Parameters<typeof search>[0]) => search(call);
  });
  return { searchers, end: async () => {} };
}

import { parentPort } from 'node:worker_threads';
import { searcher } from '@panewright/contract';

const search = searcher();
parentPort?.on('message', (call: Parameters<typeof search>[0]) => parentPort?.postMessage(search(call)));

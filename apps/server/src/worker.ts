import { parentPort } from 'node:worker_threads';
import { answerText } from './compute/compute.ts';
import type { Delivery, Order } from './compute/workerPool.ts';

parentPort?.on('message', async ({ name, text }: Order) => {
  let delivery: Delivery;
  try {
    delivery = { answer: await answerText(name, text) };
  } catch (error) {
    delivery = { fault: error instanceof Error ? (error.stack ?? error.message) : String(error) };
  }
  parentPort?.postMessage(delivery);
});

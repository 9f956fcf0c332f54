import { parentPort } from 'node:worker_threads';
import { answerText } from './compute/compute.ts';
import type { Delivery, Order } from './compute/workerPool.ts';

const tell = (done: number, of: number): void => {
  const delivery: Delivery = { done, of };
  parentPort?.postMessage(delivery);
};

parentPort?.on('message', async ({ name, text, language }: Order) => {
  let delivery: Delivery;
  try {
    delivery = { answer: await answerText(name, text, { language, told: tell }) };
  } catch (error) {
    delivery = { fault: error instanceof Error ? (error.stack ?? error.message) : String(error) };
  }
  parentPort?.postMessage(delivery);
});

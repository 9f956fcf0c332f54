import { parentPort } from 'node:worker_threads';
import { answerText, type Told } from './compute/compute.ts';
import type { Delivery, Order } from './compute/workerPool.ts';

const tell: Told = (done, of, stage) => {
  const delivery: Delivery = { done, of, ...(stage === undefined ? {} : { stage }) };
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

import { derive } from '../contract.ts';
import type { WorkAnswer, WorkRequest } from './planner.ts';
import { shapesWork } from './shapesWork.ts';

const shapes = shapesWork();

self.onmessage = ({ data }: MessageEvent<WorkRequest>) => {
  const { ticket, part, job, catalogue, seed } = data;
  let answer: WorkAnswer;
  try {
    answer =
      part === 'shapes'
        ? { ticket, shapes: shapes(job, catalogue, seed) }
        : { ticket, plan: laterStages(derive(job, catalogue, seed)) };
  } catch (fault) {
    answer = { ticket, fault: fault instanceof Error ? fault.message : String(fault) };
  }
  self.postMessage(answer);
};

const laterStages = ({ cutting, takeOff, price, findings }: ReturnType<typeof derive>) => ({
  cutting,
  takeOff,
  price,
  findings,
});

import { derive } from '../contract.ts';
import type { WorkAnswer, WorkRequest } from './planner.ts';

self.onmessage = ({ data }: MessageEvent<WorkRequest>) => {
  const { ticket, job, catalogue, seed } = data;
  let answer: WorkAnswer;
  try {
    answer = { ticket, plan: derive(job, catalogue, seed) };
  } catch (fault) {
    answer = { ticket, fault: fault instanceof Error ? fault.message : String(fault) };
  }
  self.postMessage(answer);
};

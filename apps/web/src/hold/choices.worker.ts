import { callOperation, inOne, makeShow, sayRefusal } from '../contract.ts';
import type { ChoicesAnswer, ChoicesRequest } from './useMagnetChoices.ts';

self.onmessage = async ({ data }: MessageEvent<ChoicesRequest>) => {
  const { ticket, ...input } = data;
  let answer: ChoicesAnswer;
  try {
    const result = await callOperation('magnetChoices', input);
    answer = result.ok
      ? { ticket, choices: result.value as never }
      : { ticket, sentence: inOne(sayRefusal(result.refusal, makeShow({ units: input.job.units }))) };
  } catch (fault) {
    answer = { ticket, sentence: fault instanceof Error ? fault.message : String(fault) };
  }
  self.postMessage(answer);
};

import { callOperation, inOne, makeShow, sayRefusal } from '../contract.ts';
import { messagesIn } from '../text/messagesIn.ts';
import type { ChoicesAnswer, ChoicesRequest } from './useMagnetChoices.ts';

self.onmessage = async ({ data }: MessageEvent<ChoicesRequest>) => {
  const { ticket, language, ...input } = data;
  let answer: ChoicesAnswer;
  try {
    const messages = await messagesIn(language);
    const result = await callOperation('magnetChoices', input, messages ? { messages } : {});
    const show = makeShow({ units: input.job.units, language });
    answer = result.ok
      ? { ticket, choices: result.value as never }
      : { ticket, sentence: inOne(sayRefusal(result.refusal, show, messages)) };
  } catch (fault) {
    answer = { ticket, sentence: fault instanceof Error ? fault.message : String(fault) };
  }
  self.postMessage(answer);
};

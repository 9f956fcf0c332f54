import {
  callOperation,
  httpAnswer,
  type Language,
  messagesOf,
  type Ports,
  readText,
  type Tools,
} from '@panewright/contract';
import { fonts } from './fonts.ts';

/** An answer ready to be sent. */
export interface Answer {
  readonly status: number;
  /** JSON text. */
  readonly body: string;
}

/** The work was given up because nobody waits for it any more. */
export class GivenUp extends Error {
  override readonly name = 'GivenUp';
}

/** Told how far a work is, in steps of it. */
export type Told = NonNullable<Tools['progress']>;

/** The language of its sentences, English where none is given, and who is told how far the work is. */
export interface How {
  readonly language?: Language | undefined;
  readonly told?: Told | undefined;
}

/** Where operations that only compute are run. */
export interface Compute {
  /** `text` is the input as JSON text. Aborting `signal` stops the work and rejects with `GivenUp`. */
  run(name: string, text: string, signal: AbortSignal, how?: How): Promise<Answer>;
  close(): Promise<void>;
}

/** One operation on JSON text from outside, answered as JSON text. */
export async function answerText(
  name: string,
  text: string,
  { language = 'en', told }: How = {},
  ports?: Ports,
): Promise<Answer> {
  const read = readText(text);
  const messages = messagesOf[language];
  const { status, body } = httpAnswer(
    read.ok
      ? await callOperation(name, read.value, {
          ...{ ...ports, fonts, messages },
          ...(told ? { progress: told } : {}),
        })
      : read,
    messages,
  );
  return { status, body: JSON.stringify(body) };
}

/** Runs on the caller's own thread: for tests. */
export const inProcess: Compute = {
  run: (name, text, _, how) => answerText(name, text, how),
  close: async () => {},
};

import { useEffect, useRef, useState } from 'react';
import { spoken } from '../text/useWords.ts';
import { spokenLength } from './spokenLength.ts';

/** The part of the browser's speech recognition that is used here; not every browser has it. */
interface Recognition {
  lang: string;
  interimResults: boolean;
  onresult:
    | ((event: { readonly results: ArrayLike<ArrayLike<{ readonly transcript: string }>> }) => void)
    | null;
  onerror: ((event: { readonly error: string }) => void) | null;
  onend: (() => void) | null;
  start(): void;
  abort(): void;
}
type Maker = new () => Recognition;

const makerOf = (): Maker | undefined => {
  const page = globalThis as { SpeechRecognition?: Maker; webkitSpeechRecognition?: Maker };
  return page.SpeechRecognition ?? page.webkitSpeechRecognition;
};

export interface Speech {
  readonly listening: boolean;
  /** True where the browser heard nothing or was not allowed to listen. */
  readonly failed: boolean;
  readonly listen: () => void;
}

/** Listens for one length; null where the browser cannot. What was heard goes to `hear` as text to be read. */
export function useSpeech(hear: (text: string) => void): Speech | null {
  const [listening, setListening] = useState(false);
  const [failed, setFailed] = useState(false);
  const running = useRef<Recognition | null>(null);
  useEffect(() => () => running.current?.abort(), []);
  const Maker = makerOf();
  if (!Maker) return null;
  const listen = () => {
    running.current?.abort();
    const one = new Maker();
    running.current = one;
    one.lang = spoken().locale;
    one.interimResults = false;
    one.onresult = ({ results }) => {
      const said = results[0]?.[0]?.transcript;
      if (said) hear(spokenLength(said, spoken().language));
    };
    one.onerror = () => setFailed(true);
    one.onend = () => setListening(false);
    setFailed(false);
    setListening(true);
    one.start();
  };
  return { listening, failed, listen };
}

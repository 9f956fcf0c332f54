import { useState } from 'react';
import { sentenceOf } from '../app/useAsk.ts';
import type { Offcut } from '../contract.ts';
import { useCatalogue, useWork } from '../job/work.ts';
import { useWords } from '../text/useWords.ts';

/** Times a change is made again on a catalogue that was saved from elsewhere meanwhile. */
const ROUNDS = 4;
const NONE: readonly Offcut[] = [];

export interface Stock {
  readonly offcuts: readonly Offcut[];
  /** Changes the stock and saves it at once; says `done`, or why it could not be. Gives whether it was done. */
  readonly change: (
    change: (offcuts: readonly Offcut[]) => readonly Offcut[],
    done: string,
  ) => Promise<boolean>;
  /** The same of one offcut, as it is then. */
  readonly changeOne: (id: string, to: (offcut: Offcut) => Offcut, done: string) => Promise<boolean>;
  readonly said: string;
  readonly failed: string | null;
}

/** The shop's offcuts: a part of its catalogue, which others may be saving too. */
export function useStock(): Stock {
  const w = useWords();
  const { catalogue, server } = useWork();
  const offcuts = useCatalogue((all) => all.offcuts) ?? NONE;
  const [said, say] = useState('');
  const [failed, fail] = useState<string | null>(null);
  const change: Stock['change'] = async (to, done) => {
    try {
      for (let round = 0; round < ROUNDS; round++) {
        const { document, revision } = catalogue.store.getState();
        const next = { ...document, offcuts: [...to(document.offcuts ?? [])] };
        const answer = await server.saveCatalogue(next, revision);
        if (answer.kind === 'saved') {
          catalogue.replace(next, answer.revision);
          say(done);
          fail(null);
          return true;
        }
        if (answer.kind === 'refused') {
          fail(answer.why);
          return false;
        }
        const theirs = await server.openCatalogue();
        catalogue.replace(theirs.catalogue, theirs.revision);
      }
      fail(w.save.conflictShort);
    } catch (error) {
      fail(sentenceOf(error));
    }
    return false;
  };
  const changeOne: Stock['changeOne'] = (id, to, done) =>
    change((all) => all.map((one) => (one.id === id ? to(one) : one)), done);
  return { offcuts, change, changeOne, said, failed };
}

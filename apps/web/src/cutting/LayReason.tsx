import type { LayPlan } from '../contract.ts';
import { useUnits } from '../fields/useUnits.ts';
import { showLength } from '../text/show.ts';
import { useWords } from '../text/useWords.ts';
import type { LayOnPage } from './useLay.ts';

/** Play below this is not worth a word, mm. */
const LEAST_PLAY = 0.5;

/** Why the lay is as long as it is, in a sentence: the pieces that lie one against the next up to its end. */
export function LayReason({ lay, page }: { readonly lay: LayPlan; readonly page: LayOnPage }) {
  const w = useWords();
  const units = useUnits();
  if (!lay.chain) return null;
  const names = lay.chain.copies.flatMap(({ piece, copy }) => {
    const at = page.drawn.findIndex((one) => one.piece === piece && one.copy === copy);
    return at >= 0 ? [page.nameOf(page.places[at]!)] : [];
  });
  const play = lay.chain.play > LEAST_PLAY ? showLength(lay.chain.play, units) : null;
  return <p>{w.lay.because(lay.chain.from === null ? w.lay.cutEnd : w.lay.keptClear, names, play)}</p>;
}

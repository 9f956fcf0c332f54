import { useWords } from '../text/useWords.ts';
import { PlaceEntry } from './PlaceEntry.tsx';
import { MEASURES, type Measures } from './placeMeasures.ts';

interface Props {
  readonly place: Measures;
  /** Says why a measure cannot be so, or null. */
  readonly set: (which: keyof Measures, value: number) => string | null;
}

/** The four measures of a place on cloth, each an entry of its own. */
export function MeasureEntries({ place, set }: Props) {
  const w = useWords();
  return MEASURES.map((which) => (
    <PlaceEntry
      key={which}
      label={w.reserved[which]}
      value={place[which]}
      set={(value) => set(which, value)}
    />
  ));
}

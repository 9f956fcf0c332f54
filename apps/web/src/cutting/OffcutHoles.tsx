import { newId } from '../app/newId.ts';
import type { Offcut, OffcutHole } from '../contract.ts';
import { useWords } from '../text/useWords.ts';
import { MeasureEntries } from './MeasureEntries.tsx';
import { HAND, type Measures, withMeasure } from './placeMeasures.ts';

const MOST = 20;
/** An entry at the very edge is rounded, mm. */
const EDGE = 1;

interface Props {
  readonly offcut: Offcut;
  /** Saves them as they are then, changed; says `done`. */
  readonly set: (
    change: (holes: readonly OffcutHole[]) => readonly OffcutHole[],
    done: string,
  ) => Promise<void>;
}

/** Holes and faults of an offcut, each by its four measures: nothing is cut there. */
export function OffcutHoles({ offcut: { name, holes = [], along, across }, set }: Props) {
  const w = useWords();
  const h = w.offcut.holes;
  const add = () => {
    const size = { from: 0, to: Math.min(HAND, along), near: 0, far: Math.min(HAND, across) };
    const hole = { id: newId('hole'), ...size };
    void set((all) => [...all, hole], h.added(name));
  };
  const measure = (hole: OffcutHole, which: keyof Measures, value: number): string | null => {
    const next = withMeasure(hole, which, value, { along, across });
    if (Math.min(next.from, next.near) < 0 || next.from >= along || next.near >= across) return h.outside;
    if (next.to > along + EDGE || next.far > across + EDGE) return h.outside;
    if (next.to <= next.from || next.far <= next.near) return h.backwards;
    void set((all) => all.map((one) => (one.id === hole.id ? { ...one, ...next } : one)), h.changed(name));
    return null;
  };
  return (
    <details>
      <summary aria-label={w.offcut.of(h.title(holes.length), name)}>{h.title(holes.length)}</summary>
      <p className="about">{h.about}</p>
      {holes.map((hole, index) => (
        <fieldset key={hole.id}>
          <legend>{h.one(index + 1)}</legend>
          <div className="fields fields-narrow">
            <MeasureEntries place={hole} set={(which, value) => measure(hole, which, value)} />
          </div>
          <button
            type="button"
            className="quiet"
            aria-label={w.offcut.of(h.removeOne(index + 1), name)}
            onClick={() => void set((all) => all.filter(({ id }) => id !== hole.id), h.removed(name))}
          >
            {w.offcut.removeIt}
          </button>
        </fieldset>
      ))}
      <button
        type="button"
        disabled={holes.length >= MOST}
        aria-label={w.offcut.of(h.add, name)}
        onClick={add}
      >
        {h.add}
      </button>
    </details>
  );
}

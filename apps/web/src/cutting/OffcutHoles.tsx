import { newId } from '../app/newId.ts';
import type { Offcut, OffcutHole } from '../contract.ts';
import { useWords } from '../text/useWords.ts';
import { PlaceEntry } from './PlaceEntry.tsx';

/** A new hole, until it is measured: as large as a hand, in a corner. */
const FIRST = 100;
const MOST = 20;
const MEASURES = ['from', 'to', 'near', 'far'] as const;

interface Props {
  readonly offcut: Offcut;
  /** Saves them; says `done`. */
  readonly set: (holes: readonly OffcutHole[], done: string) => Promise<void>;
}

/** Holes and faults of an offcut, each by its four measures: nothing is cut there. */
export function OffcutHoles({ offcut: { name, holes = [], along, across }, set }: Props) {
  const w = useWords();
  const h = w.offcut.holes;
  const add = () => {
    const size = { from: 0, to: Math.min(FIRST, along), near: 0, far: Math.min(FIRST, across) };
    void set([...holes, { id: newId('hole'), ...size }], h.added(name));
  };
  const measure = (hole: OffcutHole, which: (typeof MEASURES)[number], value: number): string | null => {
    const next = { ...hole, [which]: value };
    if (next.to <= next.from || next.far <= next.near) return w.reserved.backwards;
    if (Math.min(next.from, next.near) < 0 || next.from >= along || next.near >= across) return h.outside;
    void set(
      holes.map((one) => (one.id === hole.id ? next : one)),
      h.changed(name),
    );
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
            {MEASURES.map((which) => (
              <PlaceEntry
                key={which}
                label={w.reserved[which]}
                value={hole[which]}
                set={(value) => measure(hole, which, value)}
              />
            ))}
          </div>
          <button
            type="button"
            className="quiet"
            aria-label={w.offcut.of(h.removeOne(index + 1), name)}
            onClick={() =>
              void set(
                holes.filter(({ id }) => id !== hole.id),
                h.removed(name),
              )
            }
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

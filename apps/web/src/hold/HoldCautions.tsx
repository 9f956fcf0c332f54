import type { FindingCode } from '../contract.ts';
import { FindingItem } from '../findings/FindingItem.tsx';
import { bySeverity } from '../findings/stageOf.ts';
import { useFindings } from '../findings/useFindings.ts';
import { useWords } from '../text/useWords.ts';

/** What can hurt someone by the choice of magnets or of where they sit. */
export const BESIDE_CHOICE: readonly FindingCode[] = [
  'MAGNETS_PINCH',
  'MAGNETS_SWALLOWED',
  'MAGNETS_IMPLANTS',
  'MAGNETS_COMPASS',
  'HEAT_WEAKENS_MAGNETS',
  'EXIT_OPENING',
  'REMOVE_BEFORE_DRIVING',
];

/** Cautions where the magnets are chosen, with this job's own figures. */
export function HoldCautions({ opening }: { readonly opening: string | undefined }) {
  const w = useWords();
  const found = useFindings().filter(
    ({ code, where }) =>
      BESIDE_CHOICE.includes(code) && (where.opening === undefined || where.opening === opening),
  );
  if (found.length === 0) return <p className="caution field-wide">{w.hold.caution}</p>;
  return (
    <section className="field-wide" aria-label={w.holding.cautions}>
      <h4>{w.holding.cautions}</h4>
      <ul className="findings">
        {bySeverity(found).map((finding, index) => (
          // Findings have no id; the list is made anew with each plan.
          <li key={index}>
            <FindingItem finding={finding} />
          </li>
        ))}
      </ul>
    </section>
  );
}

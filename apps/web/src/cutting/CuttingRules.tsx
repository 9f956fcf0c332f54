import type { FindingCode } from '../contract.ts';
import { CheckField, SelectField } from '../fields/fields.tsx';
import { FindingItem } from '../findings/FindingItem.tsx';
import { useFindings } from '../findings/useFindings.ts';
import { useJob, useWork } from '../job/work.ts';
import { useWords } from '../text/useWords.ts';

const KINDS = ['any', 'panel', 'place', 'job'] as const;

/** What the rules come to: it stands beside them. */
export const OF_RULES: readonly FindingCode[] = [
  ...(['KEPT_TOGETHER_COSTS', 'KEPT_TOGETHER_CLOTHS', 'KEPT_TOGETHER_CUT'] as const),
  ...(['SAME_WAY_COSTS', 'SAME_WAY_GRAINS', 'SAME_WAY_TOO_WIDE'] as const),
];

/** Cloth of two rolls may differ in colour, and a cloth looks another when it is turned: what must not be mixed. */
export function CuttingRules() {
  const w = useWords();
  const { job } = useWork();
  const oneBatch = useJob((state) => state.document.oneBatch) ?? 'any';
  const sameWay = useJob((state) => state.document.sameWay) ?? false;
  const said = useFindings().filter(({ code }) => OF_RULES.includes(code));
  return (
    <section>
      <h3>{w.offcut.rules.title}</h3>
      <SelectField
        label={w.offcut.rules.together}
        className="field-rule"
        value={oneBatch}
        options={KINDS.map((value) => ({ value, label: w.offcut.rules.kinds[value] }))}
        set={(value) => {
          job.edit('oneBatch', (draft) => {
            if (value === 'any') delete draft.oneBatch;
            else draft.oneBatch = value;
          });
          job.settle();
        }}
      />
      <p className="about">{w.offcut.rules.togetherAbout}</p>
      <CheckField
        label={w.offcut.rules.sameWay}
        value={sameWay}
        set={(value) => {
          job.edit('sameWay', (draft) => {
            if (value) draft.sameWay = true;
            else delete draft.sameWay;
          });
          job.settle();
        }}
      />
      <p className="about">{w.offcut.rules.sameWayAbout}</p>
      <div aria-live="polite">
        {said.length > 0 ? (
          <ul className="findings">
            {said.map((finding, index) => (
              // Findings have no id; the list is made anew with each plan.
              <li key={index}>
                <FindingItem finding={finding} />
              </li>
            ))}
          </ul>
        ) : null}
      </div>
    </section>
  );
}

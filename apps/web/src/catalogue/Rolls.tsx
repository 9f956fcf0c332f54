import type { Catalogue } from '../contract.ts';
import type { DocumentStore } from '../job/documentStore.ts';
import { useWords } from '../text/useWords.ts';
import { ItemField } from './ItemField.tsx';
import type { FieldSpec } from './lists.ts';

const ROLL: readonly FieldSpec[] = [
  { at: 'width', label: 'rollWidth', kind: 'length' },
  { at: 'step', label: 'rollStep', kind: 'length' },
  { at: 'price', label: 'rollPrice', kind: 'money' },
];

interface Props {
  readonly document: DocumentStore<Catalogue>;
  readonly index: number;
  readonly fabric: Catalogue['fabrics'][number];
}

/** The widths a cloth is sold in. */
export function Rolls({ document, index, fabric }: Props) {
  const w = useWords();
  return (
    <fieldset>
      <legend>{w.catalogue.item.rolls}</legend>
      {fabric.rolls.map((roll, n) => (
        // A width is known by its place in the list.
        <div key={n} className="fields">
          {ROLL.map((spec) => (
            <ItemField
              key={spec.at}
              document={document}
              spec={spec}
              item={roll}
              itemKey={`fabrics.${fabric.id}.rolls.${n}`}
              itemIn={(draft) => draft.fabrics[index]!.rolls[n]!}
            />
          ))}
          {fabric.rolls.length > 1 ? (
            <button
              type="button"
              className="quiet"
              aria-label={w.catalogue.item.removeRoll(n + 1)}
              onClick={() =>
                document.edit(
                  `fabrics.${fabric.id}.rolls.remove`,
                  (draft) => void draft.fabrics[index]!.rolls.splice(n, 1),
                )
              }
            >
              {w.app.remove}
            </button>
          ) : null}
        </div>
      ))}
      <button
        type="button"
        disabled={fabric.rolls.length >= 12}
        onClick={() =>
          document.edit(`fabrics.${fabric.id}.rolls.add`, (draft) => {
            const { rolls } = draft.fabrics[index]!;
            rolls.push({ ...rolls.at(-1)! });
          })
        }
      >
        {w.catalogue.item.addRoll}
      </button>
    </fieldset>
  );
}

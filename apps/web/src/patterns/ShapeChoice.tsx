import type { PatternPlan } from '../contract.ts';
import { SelectField } from '../fields/fields.tsx';
import { useJob, useWork } from '../job/work.ts';
import { useWords } from '../text/useWords.ts';

/** Whether a shared pattern is one of its openings, and which, or their mean. */
export function ShapeChoice({ pattern }: { readonly pattern: PatternPlan }) {
  const w = useWords();
  const { job } = useWork();
  const openings = useJob((state) => state.document.openings);
  const chosen = useJob((state) => state.document.patternShapes) ?? [];
  const members = pattern.members
    .map(({ opening }) => opening)
    .toSorted((a, b) => placeOf(openings, a) - placeOf(openings, b));
  const ours = chosen.filter(({ opening }) => members.includes(opening));
  const one = ours.find(({ shape }) => shape === 'this');
  const value = one ? `this ${one.opening}` : ours.length > 0 ? 'mean' : 'first';
  const put = (next: string) => {
    job.edit(`patternShape.${members[0]}`, (draft) => {
      const rest = (draft.patternShapes ?? []).filter(({ opening }) => !members.includes(opening));
      const added =
        next === 'first'
          ? []
          : next === 'mean'
            ? [{ opening: members[0]!, shape: 'mean' as const }]
            : [{ opening: next.slice('this '.length), shape: 'this' as const }];
      draft.patternShapes = [...rest, ...added];
    });
    job.settle();
  };
  return (
    <SelectField
      label={w.patterns.shape}
      value={value}
      options={[
        { value: 'first', label: w.patterns.shapeFirst },
        { value: 'mean', label: w.patterns.shapeMean },
        ...members.map((id) => ({
          value: `this ${id}`,
          label: w.patterns.shapeOf(`${id} ${openings.find((opening) => opening.id === id)?.name ?? ''}`),
        })),
      ]}
      set={put}
    />
  );
}

const placeOf = (openings: readonly { readonly id: string }[], id: string): number =>
  openings.findIndex((opening) => opening.id === id);

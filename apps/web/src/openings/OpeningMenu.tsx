import { current } from 'immer';
import type { Opening } from '../contract.ts';
import { useJob, useWork } from '../job/work.ts';
import { useWords } from '../text/useWords.ts';
import { freeId } from './newOpening.ts';

interface Props {
  readonly opening: Opening;
  readonly show: (opening: string | null) => void;
}

/** What can be done with the opening as a whole. All of it can be undone. */
export function OpeningMenu({ opening, show }: Props) {
  const w = useWords();
  const { job } = useWork();
  const openings = useJob((state) => state.document.openings);
  const at = openings.findIndex((one) => one.id === opening.id);
  const move = (by: -1 | 1) =>
    job.edit(`move.${opening.id}.${at}`, (draft) => {
      const [taken] = draft.openings.splice(at, 1);
      draft.openings.splice(at + by, 0, taken!);
    });
  const copy = () => {
    const id = freeId('W', openings);
    const problem = job.edit(`copy.${id}`, (draft) => {
      const twin = structuredClone(current(draft.openings[at]!));
      draft.openings.splice(at + 1, 0, { ...twin, id, name: w.openings.copyName(twin.name).slice(0, 60) });
    });
    if (!problem) show(id);
  };
  const remove = () => {
    const next = openings[at + 1] ?? openings[at - 1];
    job.edit(`remove.${opening.id}`, (draft) => {
      draft.openings.splice(at, 1);
    });
    show(next?.id ?? null);
  };
  return (
    <fieldset>
      <legend>{w.openings.more}</legend>
      <div className="buttons">
        <button type="button" onClick={copy}>
          {w.openings.copy}
        </button>
        <button type="button" disabled={at <= 0} onClick={() => move(-1)}>
          {w.openings.earlier}
        </button>
        <button type="button" disabled={at >= openings.length - 1} onClick={() => move(1)}>
          {w.openings.later}
        </button>
        <button type="button" onClick={remove}>
          {w.openings.remove}
        </button>
      </div>
    </fieldset>
  );
}

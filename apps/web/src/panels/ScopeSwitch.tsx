import { useId } from 'react';
import { useWords } from '../text/useWords.ts';
import type { ScopedChoices } from './scope.ts';

/** For whom the choices below are: the job, or the opening shown. */
export function ScopeSwitch({ scoped }: { readonly scoped: ScopedChoices }) {
  const w = useWords();
  const name = useId();
  if (!scoped.opening) return null;
  return (
    <fieldset className="scope">
      <legend>{w.scope.label}</legend>
      <label>
        <input
          type="radio"
          name={name}
          checked={scoped.scope === 'job'}
          onChange={() => scoped.setScope('job')}
        />
        <span>{w.scope.all}</span>
      </label>
      <label>
        <input
          type="radio"
          name={name}
          checked={scoped.scope === 'one'}
          onChange={() => scoped.setScope('one')}
        />
        <span>{w.scope.one(scoped.opening.id)}</span>
      </label>
    </fieldset>
  );
}

interface OwnProps {
  readonly scoped: ScopedChoices;
  readonly of: Parameters<ScopedChoices['isOwn']>[0];
  readonly label: string;
}

/** Marks an own choice of one opening and takes it back. */
export function OwnChoice({ scoped, of, label }: OwnProps) {
  const w = useWords();
  if (!scoped.isOwn(of)) return null;
  if (scoped.scope === 'job')
    return <span className="own-choice">{`${scoped.opening?.id}: ${w.scope.own}`}</span>;
  return (
    <button
      type="button"
      className="quiet own-choice"
      onClick={() => scoped.asJob(of)}
      aria-label={w.scope.asJobOf(label)}
    >
      {w.scope.asJob}
    </button>
  );
}

import { LengthField, SelectField } from '../fields/fields.tsx';
import { useCatalogue, useWork } from '../job/work.ts';
import { OwnChoice, ScopeSwitch } from '../panels/ScopeSwitch.tsx';
import type { ScopedChoices } from '../panels/scope.ts';
import { useWords } from '../text/useWords.ts';

const LENGTHS = ['spacing', 'upTo', 'pocket'] as const;
const MAGNETS = ['outside', 'inside'] as const;

/** Spacing, pockets, magnets, poles, film, tape, thread; the caution on magnets stands with their choice. */
export function HoldChoices({ scoped }: { readonly scoped: ScopedChoices }) {
  const w = useWords();
  const { job } = useWork();
  const magnets = useCatalogue((catalogue) => catalogue.magnets);
  const { hold } = scoped.choices;
  return (
    <section>
      <h3>{w.hold.choices}</h3>
      <ScopeSwitch scoped={scoped} />
      <div className="fields">
        {LENGTHS.map((key) => (
          <LengthField
            key={key}
            document={job}
            entry={scoped.keyOf(`hold.${key}`)}
            label={w.hold[key]}
            value={hold[key]}
            set={(value) => scoped.setHold(key, value)}
            beside={<OwnChoice scoped={scoped} of={`hold.${key}`} label={w.hold[key]} />}
          />
        ))}
        {MAGNETS.map((key) => (
          <SelectField
            key={key}
            label={w.hold[key]}
            value={hold[key]}
            options={magnets.map(({ id, name }) => ({ value: id, label: name }))}
            set={(value) => scoped.setHold(key, value)}
            beside={<OwnChoice scoped={scoped} of={`hold.${key}`} label={w.hold[key]} />}
          />
        ))}
        <p className="caution field-wide">{w.hold.caution}</p>
        <SelectField
          label={w.hold.poleOut}
          value={hold.poleOut}
          options={(['north', 'south'] as const).map((value) => ({ value, label: w.hold.poles[value] }))}
          set={(value) => scoped.setHold('poleOut', value)}
          beside={<OwnChoice scoped={scoped} of="hold.poleOut" label={w.hold.poleOut} />}
        />
        <Supplies scoped={scoped} />
      </div>
    </section>
  );
}

const SUPPLIES = [
  ['wrapFilm', 'wrapFilms'],
  ['tape', 'tapes'],
  ['thread', 'threads'],
] as const;

function Supplies({ scoped }: { readonly scoped: ScopedChoices }) {
  const w = useWords();
  const catalogue = useCatalogue((all) => all);
  return SUPPLIES.map(([key, list]) => (
    <SelectField
      key={key}
      label={w.hold[key]}
      value={scoped.choices[key]}
      options={catalogue[list].map(({ id, name }) => ({ value: id, label: name }))}
      set={(value) => scoped.set(key, value)}
      beside={<OwnChoice scoped={scoped} of={key} label={w.hold[key]} />}
    />
  ));
}

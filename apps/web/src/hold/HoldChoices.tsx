import { PolesHelp } from '../drawing/HelpDrawing.tsx';
import { LengthField, SelectField } from '../fields/fields.tsx';
import { lengthEntry, readLengthEntry, sayInUnit } from '../fields/lengthEntry.ts';
import { SliderField } from '../fields/SliderField.tsx';
import { useUnits } from '../fields/useUnits.ts';
import { HeatField, WindField } from '../fields/WeatherFields.tsx';
import { useCatalogue, useWork } from '../job/work.ts';
import { OwnChoice, ScopeSwitch } from '../panels/ScopeSwitch.tsx';
import type { ScopedChoices } from '../panels/scope.ts';
import { showLength } from '../text/show.ts';
import { useWords } from '../text/useWords.ts';
import { HoldCautions } from './HoldCautions.tsx';

const LENGTHS = ['upTo', 'pocket'] as const;
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
      <WindField />
      <HeatField />
      <ScopeSwitch scoped={scoped} />
      <SpacingField scoped={scoped} />
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
        <HoldCautions opening={scoped.opening?.id} />
        <SelectField
          label={w.hold.poleOut}
          value={hold.poleOut}
          options={(['north', 'south'] as const).map((value) => ({ value, label: w.hold.poles[value] }))}
          set={(value) => scoped.setHold('poleOut', value)}
          beside={<OwnChoice scoped={scoped} of="hold.poleOut" label={w.hold.poleOut} />}
        />
        <PolesHelp />
        <SelectField
          label={w.hold.poleWay}
          value={hold.poles ?? 'uniform'}
          options={(['uniform', 'keyed'] as const).map((value) => ({ value, label: w.hold.poleWays[value] }))}
          set={(value) => scoped.setHold('poles', value)}
          beside={<OwnChoice scoped={scoped} of="hold.poles" label={w.hold.poleWay} />}
        />
        <Supplies scoped={scoped} />
      </div>
    </section>
  );
}

/** The spacing as a slider, in steps of a quarter of an inch or of 5 mm, and exactly. */
function SpacingField({ scoped }: { readonly scoped: ScopedChoices }) {
  const w = useWords();
  const units = useUnits();
  const { job } = useWork();
  const { spacing } = scoped.choices.hold;
  return (
    <SliderField
      document={job}
      entry={scoped.keyOf('hold.spacing')}
      label={w.hold.spacing}
      value={spacing}
      least={units === 'in' ? 4 * 25.4 : 100}
      most={units === 'in' ? 48 * 25.4 : 1200}
      step={units === 'in' ? 6.35 : 5}
      set={(value) => scoped.setHold('spacing', value)}
      shown={lengthEntry(spacing, units)}
      unit={w.fields.lengthUnit[units]}
      read={(text) => readLengthEntry(text, units)}
      say={(problem) => sayInUnit(problem, units) ?? problem.sentence}
      heard={showLength(spacing, units)}
      beside={<OwnChoice scoped={scoped} of="hold.spacing" label={w.hold.spacing} />}
    />
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

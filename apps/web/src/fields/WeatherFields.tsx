import { useJob, useWork } from '../job/work.ts';
import { useWords } from '../text/useWords.ts';
import { SelectField } from './fields.tsx';
import { SliderField } from './SliderField.tsx';
import { useUnits } from './useUnits.ts';
import {
  chooseUnits,
  HEAT_UNITS,
  heatEntry,
  readHeat,
  readWind,
  showHeat,
  showWind,
  useHeatUnit,
  useWindUnit,
  WIND_UNITS,
  windEntry,
} from './wind.ts';

/** Mean wind the job is to stand: a slider, an exact entry, and the unit it is read in. */
export function WindField() {
  const w = useWords();
  const t = w.holding.sliders;
  const { job } = useWork();
  const wind = useJob((state) => state.document.choices.weather.wind);
  const unit = useWindUnit(useUnits());
  return (
    <SliderField
      document={job}
      entry="weather.wind"
      label={t.wind}
      value={wind}
      least={0}
      most={25}
      step={0.25}
      set={(value) => job.edit('weather.wind', (draft) => void (draft.choices.weather.wind = value))}
      shown={windEntry(wind, unit)}
      read={(text) => readWind(text, unit)}
      say={({ issue, sentence }) =>
        issue?.kind === 'tooHigh' ? t.windMost(showWind(issue.most, unit)) : sentence
      }
      heard={showWind(wind, unit)}
      about={unit === 'Bft' ? showWind(wind, unit) : undefined}
      beside={
        <SelectField
          label={t.unit}
          hideLabel
          className="field-unit-choice"
          value={unit}
          options={WIND_UNITS.map((value) => ({ value, label: t.units[value] }))}
          set={(value) => chooseUnits({ wind: value })}
        />
      }
    />
  );
}

/** Hottest the magnets get, in the scale chosen. */
export function HeatField() {
  const w = useWords();
  const t = w.holding.sliders;
  const { job } = useWork();
  const hottest = useJob((state) => state.document.choices.weather.hottest);
  const unit = useHeatUnit(useUnits());
  return (
    <SliderField
      document={job}
      entry="weather.hottest"
      label={t.heat}
      value={hottest}
      least={20}
      most={100}
      step={1}
      set={(value) => job.edit('weather.hottest', (draft) => void (draft.choices.weather.hottest = value))}
      shown={heatEntry(hottest, unit)}
      read={(text) => readHeat(text, unit)}
      say={({ issue, sentence }) =>
        issue?.kind === 'tooHigh' || issue?.kind === 'tooLow'
          ? t.heatBetween(showHeat(0, unit), showHeat(120, unit))
          : sentence
      }
      heard={showHeat(hottest, unit)}
      beside={
        <SelectField
          label={t.heatUnit}
          hideLabel
          className="field-unit-choice"
          value={unit}
          options={HEAT_UNITS.map((value) => ({ value, label: `°${value}` }))}
          set={(value) => chooseUnits({ heat: value })}
        />
      }
    />
  );
}

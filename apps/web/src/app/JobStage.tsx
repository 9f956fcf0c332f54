import type { Draft } from 'immer';
import type { Job } from '../contract.ts';
import { NumberField, SelectField, TextArea, TextField } from '../fields/fields.tsx';
import { HeatField, WindField } from '../fields/WeatherFields.tsx';
import { StageFindings } from '../findings/StageFindings.tsx';
import { useJob, useWork } from '../job/work.ts';
import { useWords } from '../text/useWords.ts';

const LANGUAGES = ['en', 'de', 'es'] as const;
const KINDS = ['camper', 'boat', 'house', 'other'] as const;

/** Who it is for, where it goes, the weather it is to stand, and what else is to be remembered. */
export function JobStage() {
  const w = useWords();
  const { job } = useWork();
  const one = useJob((state) => state.document);
  const edit = (key: string) => (change: (draft: Draft<Job>) => void) => job.edit(key, change);
  return (
    <div className="stage stage-single">
      <h2>{w.job.title}</h2>
      <StageFindings stage="job" />
      <div className="two-columns">
        <section>
          <TextField
            document={job}
            entry="name"
            label={w.job.name}
            value={one.name}
            set={(value) => edit('name')((draft) => void (draft.name = value))}
          />
          <fieldset>
            <legend>{w.job.customer}</legend>
            <TextField
              document={job}
              entry="customer.name"
              label={w.job.customerName}
              value={one.customer.name}
              set={(value) => edit('customer.name')((draft) => void (draft.customer.name = value))}
            />
            <TextArea
              document={job}
              entry="customer.address"
              label={w.job.address}
              value={one.customer.address}
              set={(value) => edit('customer.address')((draft) => void (draft.customer.address = value))}
            />
            <TextField
              document={job}
              entry="customer.contact"
              label={w.job.contact}
              value={one.customer.contact}
              set={(value) => edit('customer.contact')((draft) => void (draft.customer.contact = value))}
            />
            <SelectField
              label={w.job.language}
              value={one.customer.language ?? ''}
              options={[
                { value: '', label: w.job.shopLanguage },
                ...LANGUAGES.map((value) => ({ value, label: w.sheets.languages[value] })),
              ]}
              set={(value) =>
                edit('customer.language')((draft) => {
                  if (value === '') delete draft.customer.language;
                  else draft.customer.language = value;
                })
              }
            />
          </fieldset>
        </section>
        <section>
          <SiteFields />
          <WeatherFields />
          <TextArea
            document={job}
            entry="notes"
            label={w.job.notes}
            value={one.notes}
            set={(value) => edit('notes')((draft) => void (draft.notes = value))}
          />
        </section>
      </div>
    </div>
  );
}

function SiteFields() {
  const w = useWords();
  const { job } = useWork();
  const site = useJob((state) => state.document.site);
  return (
    <fieldset>
      <legend>{w.job.site}</legend>
      <SelectField
        label={w.job.kind}
        value={site.kind}
        options={KINDS.map((value) => ({ value, label: w.job.kinds[value] }))}
        set={(value) => job.edit('site.kind', (draft) => void (draft.site.kind = value))}
      />
      <TextField
        document={job}
        entry="site.name"
        label={w.job.siteName}
        value={site.name}
        set={(value) => job.edit('site.name', (draft) => void (draft.site.name = value))}
      />
      <TextArea
        document={job}
        entry="site.notes"
        label={w.job.siteNotes}
        value={site.notes}
        set={(value) => job.edit('site.notes', (draft) => void (draft.site.notes = value))}
      />
    </fieldset>
  );
}

function WeatherFields() {
  const w = useWords();
  const { job } = useWork();
  const gust = useJob((state) => state.document.choices.weather.gustFactor);
  return (
    <fieldset>
      <legend>{w.job.weather}</legend>
      <div className="fields">
        <WindField />
        <NumberField
          document={job}
          entry="weather.gustFactor"
          label={w.job.gust}
          unit="×"
          value={gust}
          set={(value) =>
            job.edit('weather.gustFactor', (draft) => void (draft.choices.weather.gustFactor = value))
          }
        />
        <HeatField />
      </div>
    </fieldset>
  );
}

import { useStore } from 'zustand';
import { type Catalogue, USUAL_CLOTH } from '../contract.ts';
import { LengthField, MoneyField, NumberField, PercentField } from '../fields/fields.tsx';
import { useMoneySign } from '../fields/useUnits.ts';
import type { DocumentStore } from '../job/documentStore.ts';
import { useWords } from '../text/useWords.ts';
import { HABITS, type PlainHabit } from './lists.ts';

type Props = { readonly document: DocumentStore<Catalogue> };

/** How the shop measures, sews and cuts. */
export function HabitFields({ document }: Props) {
  const w = useWords();
  const habits = useStore(document.store, (state) => state.document.habits);
  return (
    <section>
      <h2>{w.catalogue.lists.habits}</h2>
      <div className="fields">
        {(Object.keys(HABITS) as PlainHabit[]).map((key) => {
          const entry = `habits.${key}`;
          const common = {
            document,
            entry,
            label: w.catalogue.habits[key],
            value: habits[key],
            set: (value: number) => document.edit(entry, (draft) => void (draft.habits[key] = value)),
          };
          const kind = HABITS[key];
          if (kind === 'number') return <NumberField key={key} {...common} />;
          if (kind === 'percent') return <PercentField key={key} {...common} />;
          return <LengthField key={key} kind={kind === 'thin' ? 'thin' : 'cloth'} {...common} />;
        })}
        <SlackFields document={document} />
      </div>
    </section>
  );
}

/** Slack of the cloth on the glass: the usual one until the shop has measured its own. */
function SlackFields({ document }: Props) {
  const w = useWords();
  const slack = useStore(document.store, (state) => state.document.habits.slack) ?? USUAL_CLOTH.slack;
  return (['low', 'high'] as const).map((end) => (
    <PercentField
      key={end}
      document={document}
      entry={`habits.slack.${end}`}
      label={w.catalogue.slack[end]}
      value={slack[end]}
      set={(value) =>
        document.edit(`habits.slack.${end}`, (draft) => {
          draft.habits.slack = { ...slack, [end]: value };
        })
      }
    />
  ));
}

const SHARES = ['overhead', 'markup', 'tax'] as const;

/** What an hour costs, and what is laid on top. */
export function RateFields({ document }: Props) {
  const w = useWords();
  const sign = useMoneySign();
  const rates = useStore(document.store, (state) => state.document.rates);
  const set = (key: keyof Catalogue['rates']) => (value: number) =>
    document.edit(`rates.${key}`, (draft) => void (draft.rates[key] = value));
  return (
    <section>
      <h2>{w.catalogue.lists.rates}</h2>
      <div className="fields">
        <MoneyField
          document={document}
          entry="rates.labour"
          label={w.catalogue.rates.labour}
          value={rates.labour}
          set={set('labour')}
          decimals={sign.decimals}
          symbol={sign.symbol}
        />
        {SHARES.map((key) => (
          <PercentField
            key={key}
            document={document}
            entry={`rates.${key}`}
            label={w.catalogue.rates[key]}
            value={rates[key]}
            set={set(key)}
          />
        ))}
        <NumberField
          document={document}
          entry="rates.validDays"
          label={w.catalogue.rates.validDays}
          value={rates.validDays}
          set={set('validDays')}
        />
      </div>
    </section>
  );
}

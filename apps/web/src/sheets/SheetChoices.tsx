import { Link } from 'wouter';
import { LABEL_STOCKS } from '../contract.ts';
import { CheckField, SelectField } from '../fields/fields.tsx';
import { useUnits } from '../fields/useUnits.ts';
import { useCatalogue, useJob } from '../job/work.ts';
import { showNumber } from '../text/show.ts';
import { useWords } from '../text/useWords.ts';
import { LocalField } from './LocalField.tsx';
import { OfferChoices } from './OfferChoices.tsx';
import { PaperField, usePaperWords } from './PaperField.tsx';
import { isNoNumber, paperFor, type SheetSettings } from './settings.ts';

interface Props {
  readonly settings: SheetSettings;
  readonly set: (more: Partial<SheetSettings>) => void;
}

/** What is asked for of the sheets: first the printer, then what is rarer, folded away. */
export function SheetChoices({ settings, set }: Props) {
  const w = useWords();
  return (
    <section className="sheet-choices" aria-label={w.sheets.choices}>
      <Printer settings={settings} set={set} />
      <details>
        <summary>{w.sheets.choices}</summary>
        <How settings={settings} set={set} />
      </details>
      <details>
        <summary>{w.sheets.offers}</summary>
        <OfferChoices />
      </details>
      <details open={settings.stock !== ''}>
        <summary>{w.sheets.labels}</summary>
        <Labels settings={settings} set={set} />
      </details>
      <details open={settings.hpgl}>
        <summary>{w.sheets.plotter}</summary>
        <Plotter settings={settings} set={set} />
      </details>
    </section>
  );
}

/** A printer of the shop with its paper and correction, or the paper alone. */
function Printer({ settings, set }: Props) {
  const w = useWords();
  const units = useUnits();
  const say = usePaperWords();
  const printers = useCatalogue(({ printers: all }) => all) ?? [];
  const printer = printers.find(({ id }) => id === settings.printer);
  return (
    <div className="fields">
      {printers.length > 0 ? (
        <SelectField
          label={w.sheets.printer}
          value={printer?.id ?? ''}
          options={[
            ...printers.map(({ id, name }) => ({ value: id, label: name })),
            { value: '', label: w.sheets.noPrinter },
          ]}
          set={(id) => set({ printer: id })}
        />
      ) : null}
      {printer ? null : (
        <PaperField
          label={w.sheets.paper}
          value={settings.paper || paperFor(units)}
          set={(paper) => set({ paper })}
        />
      )}
      <p className="about">
        {printer
          ? w.sheets.printerIs(
              say(printer.paper),
              showNumber(printer.correction.x, 4),
              showNumber(printer.correction.y, 4),
              printer.measured,
            )
          : null}{' '}
        <Link href="/catalogue#printers">{w.sheets.toPrinters}</Link>
      </p>
    </div>
  );
}

function How({ settings, set }: Props) {
  const w = useWords();
  const customer = useJob((state) => state.document.customer.language);
  return (
    <div className="fields">
      <SelectField
        label={w.sheets.language}
        value={settings.language}
        options={[
          { value: '', label: w.sheets.shopLanguage },
          ...(['en', 'de', 'es'] as const).map((one) => ({ value: one, label: w.sheets.languages[one] })),
        ]}
        set={(language) => set({ language })}
      />
      <LocalField
        label={w.sheets.copies}
        about={w.sheets.copiesAbout}
        numeric
        value={settings.copies}
        sentence={settings.copies.trim() !== '' && isNoNumber(settings.copies) ? w.sheets.notNumber : null}
        set={(copies) => set({ copies })}
      />
      <CheckField label={w.sheets.large} value={settings.large} set={(large) => set({ large })} />
      <CheckField
        label={w.sheets.printerTest}
        value={settings.printerTest}
        set={(printerTest) => set({ printerTest })}
      />
      {customer ? <p className="about">{w.sheets.customerLanguage(w.sheets.languages[customer])}</p> : null}
    </div>
  );
}

function Labels({ settings, set }: Props) {
  const w = useWords();
  const wrong = (text: string) => (isNoNumber(text) ? w.sheets.notNumber : null);
  return (
    <div className="fields">
      <SelectField
        label={w.sheets.labelStock}
        value={settings.stock}
        options={[
          { value: '', label: w.sheets.noLabels },
          ...LABEL_STOCKS.map(({ name }) => ({ value: name, label: name })),
        ]}
        set={(stock) => set({ stock })}
      />
      {settings.stock === '' ? null : (
        <>
          <SelectField
            label={w.sheets.labelKind}
            value={settings.kind}
            options={(['shelf', 'sewn'] as const).map((one) => ({
              value: one,
              label: w.sheets.labelKinds[one],
            }))}
            set={(kind) => set({ kind })}
          />
          <LocalField
            label={w.sheets.labelStart}
            about={w.sheets.labelStartAbout}
            numeric
            value={settings.start}
            sentence={wrong(settings.start)}
            set={(start) => set({ start })}
          />
          <LocalField
            label={w.sheets.labelCopies}
            numeric
            value={settings.labelCopies}
            sentence={wrong(settings.labelCopies)}
            set={(labelCopies) => set({ labelCopies })}
          />
          <LocalField
            label={w.sheets.address}
            about={w.sheets.addressAbout}
            value={settings.address}
            set={(address) => set({ address })}
          />
          <CheckField label={w.sheets.labelEdges} value={settings.edges} set={(edges) => set({ edges })} />
        </>
      )}
    </div>
  );
}

function Plotter({ settings, set }: Props) {
  const w = useWords();
  const wrong = (text: string) => (isNoNumber(text) ? w.sheets.notNumber : null);
  return (
    <div className="fields">
      <CheckField label={w.sheets.hpgl} value={settings.hpgl} set={(hpgl) => set({ hpgl })} />
      {settings.hpgl ? (
        <CheckField label={w.sheets.knife} value={settings.knife} set={(knife) => set({ knife })} />
      ) : null}
      {settings.hpgl && settings.knife ? (
        <>
          <LocalField
            label={w.sheets.knifeOffset}
            numeric
            unit="mm"
            value={settings.knifeOffset}
            sentence={wrong(settings.knifeOffset)}
            set={(knifeOffset) => set({ knifeOffset })}
          />
          <LocalField
            label={w.sheets.overcut}
            numeric
            unit="mm"
            value={settings.overcut}
            sentence={wrong(settings.overcut)}
            set={(overcut) => set({ overcut })}
          />
        </>
      ) : null}
    </div>
  );
}

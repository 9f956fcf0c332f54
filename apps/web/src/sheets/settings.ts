import {
  type Catalogue,
  LABEL_STOCKS,
  type Language,
  type OperationInput,
  type UnitName,
} from '../contract.ts';

/** How this browser makes sheets: texts as typed, remembered for the next job. */
export interface SheetSettings {
  /** Of the catalogue; '' for another printer. */
  readonly printer: string;
  /** A name, `roll:914.4`, or '' for the paper of the job's units. */
  readonly paper: string;
  readonly language: '' | Language;
  readonly large: boolean;
  readonly printerTest: boolean;
  readonly copies: string;
  readonly stock: string;
  readonly kind: 'shelf' | 'sewn';
  readonly start: string;
  readonly labelCopies: string;
  readonly edges: boolean;
  readonly address: string;
  readonly hpgl: boolean;
  readonly knife: boolean;
  readonly knifeOffset: string;
  readonly overcut: string;
}

export const defaultSettings = (address: string): SheetSettings => ({
  ...{ printer: '', paper: '', language: '', large: false, printerTest: false, copies: '' },
  ...{ stock: '', kind: 'shelf', start: '1', labelCopies: '1', edges: false, address },
  ...{ hpgl: false, knife: false, knifeOffset: '0.5', overcut: '2' },
});

const NAME = 'panewright.sheets';

/** What was chosen last in this browser. A label's start is not remembered: the next sheet of labels is another. */
export function rememberedSettings(address: string): SheetSettings {
  const first = defaultSettings(address);
  try {
    const kept: unknown = JSON.parse(localStorage.getItem(NAME) ?? '{}');
    if (typeof kept !== 'object' || kept === null) return first;
    const alike = Object.entries(kept).filter(
      ([key, value]) => key in first && typeof value === typeof first[key as keyof SheetSettings],
    );
    return { ...first, ...Object.fromEntries(alike), start: '1' };
  } catch {
    return first;
  }
}

export function rememberSettings(settings: SheetSettings): void {
  try {
    localStorage.setItem(NAME, JSON.stringify(settings));
  } catch {
    // Storage closed to us: the choices then hold until the page is closed.
  }
}

type Asked = Pick<
  OperationInput<'sheets'>,
  'printer' | 'paper' | 'language' | 'type' | 'templateCopies' | 'printerTest' | 'labels' | 'address' | 'hpgl'
>;

/** Not a number, as typed. */
export const isNoNumber = (text: string): boolean => !/^\s*-?\d+([.,]\d+)?\s*$/.test(text);
const number = (text: string): number => Number(text.trim().replace(',', '.'));

/** Whether a number that is needed cannot be read: then nothing is asked for. */
export function isUnreadable(settings: SheetSettings): boolean {
  const { copies, stock, start, labelCopies, hpgl, knife, knifeOffset, overcut } = settings;
  const needed = [
    ...(copies.trim() === '' ? [] : [copies]),
    ...(stock === '' ? [] : [start, labelCopies]),
    ...(hpgl && knife ? [knifeOffset, overcut] : []),
  ];
  return needed.some(isNoNumber);
}

/** The settings as the operation takes them. A printer that is in the catalogue no more is left out. */
export function askedOf(
  settings: SheetSettings,
  { printers = [] }: Pick<Catalogue, 'printers'>,
  units: UnitName,
): Asked {
  const printer = printers.find(({ id }) => id === settings.printer);
  const stock = LABEL_STOCKS.find(({ name }) => name === settings.stock);
  const knife = { offset: number(settings.knifeOffset), overcut: number(settings.overcut) };
  return {
    ...(printer ? { printer: printer.id } : { paper: paperOf(settings.paper || paperFor(units)) }),
    ...(settings.language === '' ? {} : { language: settings.language }),
    ...(settings.large ? { type: 'large' as const } : {}),
    ...(settings.printerTest ? { printerTest: true } : {}),
    ...(settings.copies.trim() === '' ? {} : { templateCopies: number(settings.copies) }),
    ...(stock
      ? {
          labels: {
            ...{ stock: stock.name, kind: settings.kind, edges: settings.edges },
            ...{ start: number(settings.start), copies: number(settings.labelCopies) },
          },
          ...(settings.address.trim() === '' ? {} : { address: settings.address.trim() }),
        }
      : {}),
    ...(settings.hpgl ? { hpgl: settings.knife ? { knife } : {} } : {}),
  };
}

export const paperFor = (units: UnitName): string => (units === 'in' ? 'letter' : 'a4');

export type Paper = NonNullable<OperationInput<'sheets'>['paper']>;

/** `a4`, or a roll as `roll:914.4`. */
export const paperKey = (paper: Paper): string =>
  typeof paper === 'string' ? paper : `roll:${Number(paper.width.toFixed(3))}`;
export const paperOf = (key: string): Paper =>
  key.startsWith('roll:') ? { kind: 'roll', width: Number(key.slice(5)) } : (key as Extract<Paper, string>);

export const COMMON_ROLLS = [24, 36, 42].map((inches) => `roll:${inches * 25.4}`);

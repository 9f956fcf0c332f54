import { inLanguage } from './inLanguage.ts';
import { installSheet } from './install/installSheet.ts';
import { laySheet } from './lay/laySheet.ts';
import { checkSheetOptions, type SheetInput } from './options.ts';
import { patternSheet } from './pattern/patternSheet.ts';
import { pocketSheet } from './pattern/pocketSheet.ts';
import { printerTest } from './pattern/printerTest.ts';
import { templateSheet } from './pattern/templateSheet.ts';
import type { Sheet } from './sheet.ts';
import { buyList } from './trade/buyList.ts';
import { costSheet } from './trade/costSheet.ts';
import { cutList } from './trade/cutList.ts';
import { quote } from './trade/quote.ts';
import { workOrder } from './work/workOrder.ts';

/** Every sheet of a job that its plan has something for, in the order they are needed. */
export const sheetsOf = (input: SheetInput): readonly Sheet[] => [...eachSheet(input)];

/**
 * The same sheets one at a time: each is drawn when it is asked for, so that a large job takes the room of its largest
 * sheet, and whoever asks can show how far it is, or stop.
 */
export function* eachSheet(input: SheetInput): Generator<Sheet, void, undefined> {
  const checked = checkSheetOptions(input.options);
  if (!checked.ok)
    throw new RangeError(
      `Sheets were asked for with options that were not checked: ${checked.refusal.code}.`,
    );
  const forCustomer = customersInput(input);
  for (const make of makers(input)) {
    const given = make === quote ? forCustomer : input;
    const { language } = given.options;
    const sheet = make(inLanguage(given));
    if (sheet !== undefined) yield language === undefined ? sheet : { ...sheet, language };
  }
}

/** In the customer's language; in the sheets' own words where such were given. */
function customersInput(input: SheetInput): SheetInput {
  const { customerLanguage: language } = input.options;
  return language === undefined ? input : { ...input, options: { ...input.options, language } };
}

/** How many sheets `eachSheet` will go through at the most, for showing how far it is. */
export const sheetsAtMost = (input: Pick<SheetInput, 'plan' | 'options'>): number => makers(input).length;

type Maker = (input: SheetInput) => Sheet | undefined;

const makers = ({ plan, options }: Pick<SheetInput, 'plan' | 'options'>): readonly Maker[] => [
  ...(options.printerTest ? [printerTest] : []),
  workOrder,
  ...plan.patterns.map(
    ({ pattern }): Maker =>
      (input) =>
        patternSheet(input, pattern),
  ),
  ...[pocketSheet, templateSheet, laySheet, cutList, installSheet, buyList, costSheet, quote],
];

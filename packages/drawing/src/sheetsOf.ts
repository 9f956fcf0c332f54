import { installSheet } from './install/installSheet.ts';
import { laySheet } from './lay/laySheet.ts';
import { checkSheetOptions, type SheetInput } from './options.ts';
import { patternSheet } from './pattern/patternSheet.ts';
import { pocketSheet } from './pattern/pocketSheet.ts';
import { printerTest } from './pattern/printerTest.ts';
import { templateSheet } from './pattern/templateSheet.ts';
import type { Sheet } from './sheet.ts';
import { buyList } from './trade/buyList.ts';
import { cutList } from './trade/cutList.ts';
import { quote } from './trade/quote.ts';
import { workOrder } from './work/workOrder.ts';

/** Every sheet of a job that its plan has something for, in the order they are needed. */
export function sheetsOf(input: SheetInput): readonly Sheet[] {
  const checked = checkSheetOptions(input.options);
  if (!checked.ok)
    throw new RangeError(
      `Sheets were asked for with options that were not checked: ${checked.refusal.code}.`,
    );
  const sheets = [
    ...(input.options.printerTest ? [printerTest(input)] : []),
    workOrder(input),
    ...input.plan.patterns.map(({ pattern }) => patternSheet(input, pattern)),
    pocketSheet(input),
    templateSheet(input),
    laySheet(input),
    cutList(input),
    installSheet(input),
    buyList(input),
    quote(input),
  ];
  const { language } = input.options;
  return sheets
    .filter((sheet) => sheet !== undefined)
    .map((sheet) => (language === undefined ? sheet : { ...sheet, language }));
}

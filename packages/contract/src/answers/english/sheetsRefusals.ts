import type { SheetsRefusal } from '../../sheets/sheetChoices.ts';
import { joinWords, type Show } from '../show.ts';
import type { Sentences } from '../words.ts';

const list = (known: readonly string[]): string =>
  joinWords(
    known.map((one) => `“${one}”`),
    'or',
  );

/** Why sheets cannot be made as they are asked for. */
export function saySheetsRefusal(refusal: SheetsRefusal, show: Show): Sentences {
  switch (refusal.code) {
    case 'ROLL_WIDTH_OUT_OF_RANGE':
      return {
        what: `A roll of paper ${show.number(refusal.width)} mm wide cannot be printed on: it is from ${refusal.least} to ${refusal.most} mm.`,
        why: 'A narrower one has no room for the measuring square, and no page may be wider.',
        do: 'Give the width of the roll in the printer.',
      };
    case 'CORRECTION_OUT_OF_RANGE':
      return {
        what: `The printer’s correction ${refusal.axis === 'x' ? 'across the paper' : 'along the paper'} is ${show.number(refusal.factor, 4)}; it is from ${refusal.least} to ${refusal.most}.`,
        why: 'A printer further out than that is set to scale its pages.',
        do: 'Set it to print at actual size and measure the test page again: the factor is nominal over measured.',
      };
    case 'TEMPLATE_COPIES_OUT_OF_RANGE':
      return {
        what: `${show.number(refusal.copies)} copies of a template cannot be made.`,
        why: '',
        do: `Ask for a whole number from 1 to ${refusal.most}.`,
      };
    case 'LABEL_START_OUT_OF_RANGE':
      return {
        what: `There is no label ${show.number(refusal.start)} on this sheet of labels: they are counted from 1 to ${refusal.most}, left to right, then down.`,
        why: '',
        do: 'Give the first label that is still on the sheet.',
      };
    case 'LABEL_COPIES_OUT_OF_RANGE':
      return {
        what: `${show.number(refusal.copies)} labels of each panel cannot be made.`,
        why: '',
        do: `Ask for a whole number from 1 to ${refusal.most}.`,
      };
    case 'LABEL_TOO_SMALL_FOR_CODE':
      return {
        what: `These labels are too small for their codes: a dot would be ${show.number(refusal.module, 2)} mm, and a phone surely reads ${refusal.least} mm and more.`,
        why: '',
        do: 'Choose larger labels, or leave out the address of the page: the code is then shorter.',
      };
    case 'LOGO_UNREADABLE':
      return {
        what: 'The shop’s sign in the catalogue is not a PNG or JPEG picture that can be read.',
        why: 'It stands at the head of the quote.',
        do: 'Choose the picture again in the catalogue, or take it off.',
      };
    case 'PRINTER_UNKNOWN':
      return {
        what: `The catalogue has no printer “${refusal.id}”.`,
        why: '',
        do:
          refusal.known.length === 0
            ? 'Add it to the catalogue, or name the paper instead.'
            : `Name ${list(refusal.known)}, or add it to the catalogue.`,
      };
    case 'OFFER_UNKNOWN':
      return {
        what: `An alternative of the quote names “${refusal.id}”, which the catalogue does not have.`,
        why: '',
        do: 'Choose the alternatives of the job again, or add it to the catalogue.',
      };
    case 'NO_OFFCUTS_TO_LABEL':
      return {
        what: 'There is no offcut to label.',
        why: 'The catalogue keeps none that is not yet cut, or none by the names given.',
        do: 'Keep an offcut first, or name one that is in stock.',
      };
    case 'LABEL_STOCK_UNKNOWN':
      return {
        what: `“${refusal.name.slice(0, 60)}” is no sheet of labels that is known.`,
        why: '',
        do: `Name ${list(refusal.known)}.`,
      };
  }
}

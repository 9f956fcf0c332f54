import { Usage } from './exits.ts';
import { decimal, wholeNumber } from './options.ts';

/** How `plan` is told what sheets to make; texts as they were typed. */
export interface SheetFlags {
  readonly paper: string | undefined;
  readonly printer: string | undefined;
  readonly correction: string | undefined;
  readonly language: string | undefined;
  readonly copies: string | undefined;
  readonly labels: string | undefined;
  readonly 'label-start': string | undefined;
  readonly 'label-copies': string | undefined;
  readonly address: string | undefined;
  readonly 'knife-offset': string | undefined;
  readonly overcut: string | undefined;
  readonly offers: readonly string[];
  readonly large: boolean;
  readonly 'printer-test': boolean;
  readonly sewn: boolean;
  readonly hpgl: boolean;
}
export const SHEET_TEXTS = [
  ...['paper', 'printer', 'correction', 'language', 'copies', 'labels', 'label-start', 'label-copies'],
  ...['address', 'knife-offset', 'overcut'],
] as const;
export const SHEET_SWITCHES = ['large', 'printer-test', 'sewn', 'hpgl'] as const;

/** The flags as the operation has them. What it refuses, it says itself. */
export function sheetChoices(flags: SheetFlags): Readonly<Record<string, unknown>> {
  const { printer, language, address, copies } = flags;
  const given: Record<string, unknown> = {
    ...{ printer, language, address },
    paper: paperOf(flags.paper),
    correction: correctionOf(flags.correction),
    templateCopies: copies === undefined ? undefined : wholeNumber('copies', copies, 1),
    type: flags.large ? 'large' : undefined,
    printerTest: flags['printer-test'] || undefined,
    labels: labelsOf(flags),
    hpgl: hpglOf(flags),
    offers: flags.offers.length > 0 ? flags.offers.map(offerOf) : undefined,
  };
  return Object.fromEntries(Object.entries(given).filter(([, value]) => value !== undefined));
}

/** letter, a4, a3, tabloid; or a roll by its width, 36in or 914mm. */
function paperOf(text: string | undefined): unknown {
  const roll = /^(\d+(?:\.\d+)?)\s*(in|mm)$/.exec(text ?? '');
  if (!roll) {
    if (text === undefined || ['letter', 'a4', 'a3', 'tabloid'].includes(text)) return text;
    throw new Usage(`--paper is letter, a4, a3, tabloid or a roll, as 36in or 914mm; it is “${text}”.`);
  }
  return { kind: 'roll', width: Number(roll[1]) * (roll[2] === 'in' ? 25.4 : 1) };
}

/** What an alternative may be, as it is typed. */
const OFFERS =
  'fabric=ID, finish=BINDING, hem=MM, finish=hotCut, steel=ID, fastener=ID or magnets=OUTSIDE/INSIDE';

/** One alternative of the quote: `fabric=mesh-sand`, or several choices together with commas between. */
function offerOf(text: string): unknown {
  const offer: { fabric?: string; finish?: object; hold?: object } = {};
  for (const part of text.split(',')) {
    const [key = '', value = '', ...more] = part.split('=');
    if (value === '' || more.length > 0) throw noOffer(text);
    if (key === 'fabric') offer.fabric = value;
    else if (key === 'finish')
      offer.finish = value === 'hotCut' ? { kind: 'hotCut' } : { kind: 'binding', binding: value };
    else if (key === 'hem') offer.finish = { kind: 'hem', width: decimal('offer hem', value) };
    else if (key === 'steel') offer.hold = { by: { kind: 'steel', strip: value } };
    else if (key === 'fastener') offer.hold = { by: { kind: 'fastener', fastener: value } };
    else if (key === 'magnets') {
      const [outside, inside = outside] = value.split('/');
      offer.hold = { by: { kind: 'magnets' }, outside, inside };
    } else throw noOffer(text);
  }
  return offer;
}

const noOffer = (text: string) => new Usage(`--offer is ${OFFERS}; it is “${text}”.`);

/** Across x along, as 1.002x0.998. */
function correctionOf(text: string | undefined): unknown {
  if (text === undefined) return undefined;
  const [x, y, ...more] = text.split('x');
  if (x === undefined || y === undefined || more.length > 0)
    throw new Usage(
      `--correction is two factors, across and along the paper, as 1.002x0.998; it is “${text}”.`,
    );
  return { x: decimal('correction', x), y: decimal('correction', y) };
}

function labelsOf(flags: SheetFlags): unknown {
  const { labels: stock, sewn, 'label-start': start, 'label-copies': copies } = flags;
  if (stock === undefined) {
    if (sewn || start !== undefined || copies !== undefined)
      throw new Usage('Name the sheet of labels too: --labels NAME.');
    return undefined;
  }
  return {
    ...{ stock, kind: sewn ? 'sewn' : 'shelf' },
    ...(start === undefined ? {} : { start: wholeNumber('label-start', start, 1) }),
    ...(copies === undefined ? {} : { copies: wholeNumber('label-copies', copies, 1) }),
  };
}

function hpglOf({ hpgl, overcut, 'knife-offset': offset }: SheetFlags): unknown {
  if (offset === undefined && overcut === undefined) return hpgl ? {} : undefined;
  return {
    knife: {
      offset: offset === undefined ? 0 : decimal('knife-offset', offset),
      overcut: overcut === undefined ? 0 : decimal('overcut', overcut),
    },
  };
}

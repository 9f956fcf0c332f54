import type { Language } from '../contract.ts';

// Spoken English lengths, as a browser's speech recognition writes them down. Common practice of the trade, no source:
// “twenty four and three eighths”, “24 and 3/8 inches”, “six hundred and twelve millimetres”, “two point five”.

const ONES = [
  ...['zero', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten', 'eleven'],
  ...['twelve', 'thirteen', 'fourteen', 'fifteen', 'sixteen', 'seventeen', 'eighteen', 'nineteen'],
];
const TENS = ['', '', 'twenty', 'thirty', 'forty', 'fifty', 'sixty', 'seventy', 'eighty', 'ninety'];
const PARTS: Readonly<Record<string, number>> = {
  half: 2,
  halves: 2,
  third: 3,
  thirds: 3,
  quarter: 4,
  quarters: 4,
  fourth: 4,
  fourths: 4,
  eighth: 8,
  eighths: 8,
  '8th': 8,
  '8ths': 8,
  '8s': 8,
  sixteenth: 16,
  sixteenths: 16,
  '16th': 16,
  '16ths': 16,
  '16s': 16,
};
/** What a browser writes of German and Spanish lengths is digits and these. Common practice, no source. */
const ENGLISH_FOR: Readonly<Record<Exclude<Language, 'en'>, readonly (readonly [RegExp, string])[]>> = {
  de: [
    [/(?<=\d),(?=\d)/g, '.'],
    [/\bkomma\b/g, 'point'],
    [/\bund\b/g, 'and'],
    [/\bein(e[nrs]?)?\b/g, '1'],
    [/\bzoll\b/g, 'in'],
    [/\bmillimetern?\b/g, 'mm'],
    [/\bzentimetern?\b/g, 'cm'],
    [/\bhalb(e[nrs]?)?\b/g, 'half'],
    [/\bviertel\b/g, 'quarters'],
    [/\bachtel\b/g, 'eighths'],
    [/\bsechzehntel\b/g, 'sixteenths'],
  ],
  es: [
    [/(?<=\d),(?=\d)/g, '.'],
    [/\b(coma|punto)\b/g, 'point'],
    [/\b(y|con)\b/g, 'and'],
    [/\buna?\b/g, '1'],
    [/\bpulgadas?\b/g, 'in'],
    [/\bmil[ií]metros?\b/g, 'mm'],
    [/\bcent[ií]metros?\b/g, 'cm'],
    [/\bmedi[oa]s?\b/g, 'half'],
    [/\bcuartos?\b/g, 'quarters'],
    [/\boctavos?\b/g, 'eighths'],
    [/\bdieciseisavos?\b/g, 'sixteenths'],
  ],
};

function inEnglish(said: string, language: Language): string {
  if (language === 'en') return said;
  return ENGLISH_FOR[language].reduce((text, [word, english]) => text.replace(word, english), said);
}

const UNITS: readonly (readonly [RegExp, string])[] = [
  [/^(millimet(er|re)s?|mms?|mil|mils)$/, 'mm'],
  [/^(centimet(er|re)s?|cms?)$/, 'cm'],
  [/^(inch|inches|ins?)$/, 'in'],
];

/**
 * What was said as text to be read as a length; what is not understood stays in it, so that it is seen and refused there.
 * “thirty two” is 32; “a half”, “one half” and “half” are 1/2; “point” begins decimals.
 */
export function spokenLength(said: string, language: Language = 'en'): string {
  const spoken = inEnglish(said.toLowerCase(), language)
    .replace(/[.,!?]+$/, '')
    .replace(/[“”"]/g, ' inches')
    .replace(/-/g, ' ')
    .replace(/(\d)(mm|cm|in)\b/g, '$1 $2')
    .split(/\s+/)
    .filter((word) => word !== '' && word !== 'a' && word !== 'an');
  const out: string[] = [];
  let number: number | null = null;
  const close = () => {
    if (number !== null) out.push(String(number));
    number = null;
  };
  for (const [index, word] of spoken.entries()) {
    const value = numberOf(word);
    const part = PARTS[word];
    if (value !== null) {
      const joins: boolean = number !== null && joinsOn(number, value, spoken[index + 1]);
      if (!joins) close();
      number = (joins ? number! : 0) + value;
    } else if (word === 'and') {
      // “two hundred and twelve” goes on; “thirty six and a half” does not.
      if (number !== null && number % 100 !== 0) close();
    } else if (word === 'hundred') number = (number ?? 1) * 100;
    else if (part !== undefined) {
      out.push(`${number ?? 1}/${part}`);
      number = null;
    } else if (word === 'point' || word === 'comma') {
      close();
      out.push('.');
    } else {
      close();
      out.push(UNITS.find(([pattern]) => pattern.test(word))?.[1] ?? word);
    }
  }
  close();
  return decimals(out.join(' '));
}

function numberOf(word: string): number | null {
  if (/^\d+$/.test(word)) return Number(word);
  const one = ONES.indexOf(word);
  if (one >= 0) return one;
  const ten = TENS.indexOf(word);
  return ten >= 2 ? ten * 10 : null;
}

/** Whether a number goes on: twenty | four, two hundred | twelve; not twenty-four | three (eighths). */
function joinsOn(so: number, value: number, next: string | undefined): boolean {
  if (so % 100 === 0 && so > 0 && value < 100) return true;
  const unitsFree = so % 10 === 0 && so % 100 !== 0 && so % 100 >= 20;
  if (!unitsFree || value >= 10 || value === 0) return false;
  // “thirty three quarters” is 30 3/4: a part after the digit takes it, unless the ten is the part’s own.
  return next === undefined || PARTS[next] === undefined;
}

/** “2 . 5” is 2.5, and “2 . 2 5” is 2.25. */
const decimals = (text: string): string =>
  text.replace(
    /(\d) \. (\d+(?: \d+)*)/g,
    (_, whole: string, rest: string) => `${whole}.${rest.replaceAll(' ', '')}`,
  );

import type { FindingNumbers } from '../plan/finding.ts';

/** A survey's refusal as flat numbers and names: lists of names in one text, the rest numbered or by its own keys. */
export function refusalNumbers(refusal: { readonly code: string }): FindingNumbers['SURVEY_IMPOSSIBLE'] {
  const numbers: { refusal: string } & Record<string, number | string> = { refusal: refusal.code };
  for (const [key, value] of Object.entries(refusal) as readonly (readonly [string, unknown])[]) {
    if (key === 'code') continue;
    if (Array.isArray(value) && value.every((one) => typeof one === 'string')) numbers[key] = value.join(' ');
    else if (typeof value === 'object' && value !== null)
      for (const [inner, one] of Object.entries(value)) numbers[`${key}.${inner}`] = one as number | string;
    else numbers[key] = value as number | string;
  }
  return numbers;
}

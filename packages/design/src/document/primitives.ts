import { z } from 'zod';

/** A short name a person types: no control characters, no blank-only text. */
export const label = (most: number) =>
  z
    .string()
    .max(most)
    .refine((text) => !hasControl(text), { message: 'holds a control character' });

export const requiredLabel = (most: number) =>
  label(most).refine((text) => text.trim().length > 0, { message: 'is blank' });

/** Free text of several lines. */
export const note = (most: number) =>
  z
    .string()
    .max(most)
    .refine((text) => !hasControl(text.replace(/[\n\t]/g, ' ')), { message: 'holds a control character' });

function hasControl(text: string): boolean {
  for (let i = 0; i < text.length; i++) {
    const code = text.charCodeAt(i);
    if (code < 32 || code === 127) return true;
  }
  return false;
}

/** Identifier inside a document: letters, digits, dot, dash, underscore; 1 to 40 long. */
export const id = z.string().regex(/^[A-Za-z0-9][A-Za-z0-9._-]{0,39}$/, {
  message: 'must be 1 to 40 letters, digits, dots, dashes or underscores, beginning with a letter or digit',
});

/** Millimetres within a stated range. */
export const lengthBetween = (least: number, most: number) => z.number().min(least).max(most);
/** Whole minor units of money (cents). */
export const amount = z.int().min(0).max(1_000_000_000);
/** A ratio from 0 to `most`. */
export const ratio = (most: number) => z.number().min(0).max(most);

export const unitName = z.enum(['in', 'mm']);
export type UnitName = z.infer<typeof unitName>;

/** ids must differ within a list. */
export function distinctIds(items: readonly { readonly id: string }[]): boolean {
  return new Set(items.map((item) => item.id)).size === items.length;
}

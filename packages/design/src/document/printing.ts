import { z } from 'zod';
import { id, lengthBetween, requiredLabel } from './primitives.ts';

/** Languages papers are written in, by ISO 639-1. */
export const language = z.enum(['en', 'de', 'es']);

/** Cut sheets by their standard's name, or paper off a roll by its width, mm. */
export const printPaper = z.union([
  z.enum(['letter', 'a4', 'a3', 'tabloid']),
  z.strictObject({ kind: z.literal('roll'), width: lengthBetween(200, 5080) }),
]);
export type PrintPaper = z.infer<typeof printPaper>;

/** Nominal over measured, along one side of the paper. */
const factor = z.number().min(0.97).max(1.03);

/** A printer of the shop, with the paper in it and what its own error is made up by. */
export const printer = z.strictObject({
  id,
  name: requiredLabel(60),
  paper: printPaper,
  correction: z
    .strictObject({ x: factor, y: factor })
    .describe('nominal over measured on the test page: x across the paper as it is fed, y along it'),
  measured: z.optional(z.iso.date()).describe('day the test page was measured; never where left out'),
});
export type Printer = z.infer<typeof printer>;

/** Text of 300,000 signs is a picture of some 225 kB. */
const MOST_LOGO = 300_000;

/** The shop's sign for the head of a quote. */
export const logo = z.strictObject({
  mediaType: z.enum(['image/png', 'image/jpeg']),
  base64: z
    .string()
    .min(1)
    .max(MOST_LOGO)
    .regex(/^[A-Za-z0-9+/]+={0,2}$/),
});
export type Logo = z.infer<typeof logo>;

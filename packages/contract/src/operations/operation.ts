import type { Result } from '@panewright/quantity';
import type { z } from 'zod';
import type { Ports, Tools } from '../ports.ts';
import type { Refusal } from '../refusal.ts';

type Answer<O> = Result<O, Refusal> | Promise<Result<O, Refusal>>;

interface Declaration<I extends z.ZodType, O extends z.ZodType> {
  readonly summary: string;
  readonly input: I;
  readonly output: O;
  /** An input that works. Every door plays it in the tests, and the pages show it. */
  readonly example: z.input<I>;
  /** Keys of the input that hold a document, which may be of an older version. */
  readonly documents?: Readonly<Record<string, 'job' | 'catalogue'>>;
}

/** An operation that only computes: it may run on any thread. Some take a tool along, such as the sheets' fonts. */
export interface Computation<I extends z.ZodType = z.ZodType, O extends z.ZodType = z.ZodType>
  extends Declaration<I, O> {
  readonly needs: 'nothing';
  run(input: z.output<I>, tools: Tools): Answer<z.output<O>>;
}

/** An operation on what is kept. */
export interface StoreOperation<I extends z.ZodType = z.ZodType, O extends z.ZodType = z.ZodType>
  extends Declaration<I, O> {
  readonly needs: 'store';
  run(input: z.output<I>, ports: Ports): Answer<z.output<O>>;
}

export type Operation = Computation | StoreOperation;

export const computation = <I extends z.ZodType, O extends z.ZodType>(
  declared: Omit<Computation<I, O>, 'needs'>,
): Computation<I, O> => ({ needs: 'nothing', ...declared });

export const storeOperation = <I extends z.ZodType, O extends z.ZodType>(
  declared: Omit<StoreOperation<I, O>, 'needs'>,
): StoreOperation<I, O> => ({ needs: 'store', ...declared });

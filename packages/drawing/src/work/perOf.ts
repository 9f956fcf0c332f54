import type { SheetInput } from '../options.ts';

/** What an operation of the shop is counted by. */
export const perOf = ({ catalogue }: SheetInput, operation: string) =>
  catalogue.operations.find(({ id }) => id === operation)?.per;

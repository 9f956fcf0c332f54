export type { InnerOutline } from './chain/nestOutlines.ts';
export * from './fileRefusal.ts';
export * from './readOutlines.ts';

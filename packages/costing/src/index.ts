export * from './jobCost.ts';
export * from './wholePacks.ts';

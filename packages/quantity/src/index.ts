export * from './quantity.ts';
export * from './result.ts';

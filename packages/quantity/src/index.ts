export * from './conversions.ts';
export * from './formatLength.ts';
export * from './lengthText.ts';
export * from './quantity.ts';
export * from './result.ts';
